package underhook.planner.verify;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;

/**
 * Answers by what was asked; those not asked for longest are forgotten. Not safe for threads.
 *
 * @param <K> what is asked: all that the answer hangs on
 */
final class Kept<K, V> {
    private final Map<K, V> answers;

    /** So many at most. */
    Kept(int most) {
        this.answers =
                new LinkedHashMap<>(16, 0.75f, true) {
                    private static final long serialVersionUID = 1;

                    @Override
                    protected boolean removeEldestEntry(Map.Entry<K, V> eldest) {
                        return size() > most;
                    }
                };
    }

    /** The answer known, or else worked out; working one out may ask others here. */
    V get(K asked, Function<K, V> work) {
        V answer = answers.get(asked);
        if (answer == null) {
            answer = work.apply(asked);
            answers.put(asked, answer);
        }
        return answer;
    }
}
