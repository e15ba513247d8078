package underhook.core.job;

import java.util.Objects;

/**
 * A line in stock with what hangs on it: remote hook, swivel, fixed ballast.
 *
 * @param lengthM from belly hook to remote hook, m
 * @param massKg all that hangs under the belly hook without a load, kg
 * @param limitKg most mass that may hang on its lower end, kg
 */
public record LineItem(String name, double lengthM, double massKg, double limitKg) {
    public LineItem {
        Objects.requireNonNull(name, "name");
        if (!(lengthM > 0 && lengthM < 500 && massKg > 0 && limitKg > 0)) {
            throw new IllegalArgumentException("line " + name + " has a value out of range.");
        }
    }
}
