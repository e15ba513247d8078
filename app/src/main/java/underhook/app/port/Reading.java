package underhook.app.port;

import java.util.List;
import java.util.Optional;

/**
 * What came of reading a file: its content, or all the faults at once.
 *
 * @param <T> the content
 * @param value present exactly when there are no faults
 */
public record Reading<T>(Optional<T> value, List<Fault> faults) {
    public Reading {
        faults = List.copyOf(faults);
        if (value.isPresent() != faults.isEmpty()) {
            throw new IllegalArgumentException("a file is read exactly when there are no faults.");
        }
    }

    public static <T> Reading<T> of(T value) {
        return new Reading<>(Optional.of(value), List.of());
    }

    /** The value when there are no faults, else the faults alone. */
    public static <T> Reading<T> of(T value, List<Fault> faults) {
        return new Reading<>(faults.isEmpty() ? Optional.of(value) : Optional.empty(), faults);
    }
}
