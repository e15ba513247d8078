package underhook.core.finding;

import java.util.List;
import java.util.function.BiFunction;
import java.util.function.Function;

/**
 * A value with remarks, or a refusal with its reasons.
 *
 * @param <T> type of the value
 */
public sealed interface Outcome<T> {
    /** The value, and what must be said with it. */
    record Done<T>(T value, List<Finding> findings) implements Outcome<T> {
        public Done {
            findings = List.copyOf(findings);
        }
    }

    /** No value; at least one finding says why. */
    record Refused<T>(List<Finding> findings) implements Outcome<T> {
        public Refused {
            findings = List.copyOf(findings);
            if (findings.isEmpty()) {
                throw new IllegalArgumentException("findings must say why it is refused.");
            }
        }
    }

    List<Finding> findings();

    static <T> Outcome<T> done(T value) {
        return new Done<>(value, List.of());
    }

    static <T> Outcome<T> done(T value, List<Finding> findings) {
        return new Done<>(value, findings);
    }

    static <T> Outcome<T> refused(Finding... findings) {
        return new Refused<>(List.of(findings));
    }

    static <T> Outcome<T> refused(List<Finding> findings) {
        return new Refused<>(findings);
    }

    /** Reads the outcome: one function for each case. */
    default <R> R fold(
            BiFunction<? super T, List<Finding>, ? extends R> whenDone,
            Function<List<Finding>, ? extends R> whenRefused) {
        if (this instanceof Done<T> done) {
            return whenDone.apply(done.value(), done.findings());
        }
        return whenRefused.apply(findings());
    }

    /** Whether there is a value. */
    default boolean isDone() {
        return this instanceof Done<T>;
    }

    /**
     * The value.
     *
     * @throws IllegalStateException if it was refused; the message lists the findings
     */
    default T getValue() {
        if (this instanceof Done<T> done) {
            return done.value();
        }
        throw new IllegalStateException("Refused: " + findings());
    }
}
