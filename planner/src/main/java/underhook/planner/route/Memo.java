package underhook.planner.route;

import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Answers that were once worked out, by question.
 *
 * <p>Safe for threads, and none waits for another: two that ask the same at once both work it out, and the first
 * answer stays. So the same question must always have the same answer.
 *
 * @param <K> questions; equal ones have one answer
 */
public final class Memo<K, V> {
    private final Map<K, V> known;

    private Memo(Map<K, V> known) {
        this.known = known;
    }

    /** Of questions that are equal where they say they are. */
    public static <K, V> Memo<K, V> of() {
        return new Memo<>(new ConcurrentHashMap<>());
    }

    /** Of questions that are equal where they are the same object. */
    public static <K, V> Memo<K, V> byIdentity() {
        return new Memo<>(Collections.synchronizedMap(new IdentityHashMap<>()));
    }

    /** Of large answers: only so many that were asked for last are kept. */
    public static <K, V> Memo<K, V> ofLast(int most) {
        return new Memo<>(
                Collections.synchronizedMap(
                        new LinkedHashMap<>(16, 0.75f, true) {
                            private static final long serialVersionUID = 1;

                            @Override
                            protected boolean removeEldestEntry(Map.Entry<K, V> eldest) {
                                return size() > most;
                            }
                        }));
    }

    /** The answer. */
    public V get(K question, Function<K, V> work) {
        V answer = known.get(question);
        return answer != null ? answer : keep(question, work.apply(question));
    }

    /** The answer where it is known. */
    public @Nullable V find(K question) {
        return known.get(question);
    }

    /** Keeps an answer; what was kept before stays. */
    public V keep(K question, V answer) {
        V before = known.putIfAbsent(question, answer);
        return before == null ? answer : before;
    }

    /** What was asked so far. */
    public List<K> questions() {
        synchronized (known) {
            return List.copyOf(known.keySet());
        }
    }

    /** Knows all that another knows. */
    public void learn(Memo<K, V> other) {
        known.putAll(other.known);
    }
}
