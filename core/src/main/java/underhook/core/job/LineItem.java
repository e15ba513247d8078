package underhook.core.job;

import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * A line in stock with what hangs on it: remote hook, swivel, fixed ballast.
 *
 * @param lengthM from belly hook to remote hook, m
 * @param massKg all that hangs under the belly hook without a load, kg
 * @param limitKg most mass that may hang on its lower end, kg
 * @param make what it is made of
 */
public record LineItem(
        String name, double lengthM, double massKg, double limitKg, LineItem.Make make) {
    /**
     * What a line is made of.
     *
     * @param endMassKg of its mass, what hangs at the lower end: remote hook, swivel, ballast, kg
     * @param diameterM of the rope, m; a flat one counts with its broad side
     * @param airspeedMPerS most true airspeed its maker allows, m/s; empty when not stated
     * @param gear names of the items it is made up of, from below upward: remote hook, swivel, rope
     */
    public record Make(
            double endMassKg, double diameterM, OptionalDouble airspeedMPerS, List<String> gear) {
        public Make {
            gear = List.copyOf(gear);
            if (!(endMassKg > 0
                    && diameterM > 0
                    && diameterM < 0.2
                    && airspeedMPerS.stream().allMatch(speed -> speed > 0))) {
                throw new IllegalArgumentException("the make of a line has a value out of range.");
            }
        }

        /** Where the job says nothing. @source PRACTICE a third at its end, thick rope */
        public static Make assumed(double massKg) {
            return new Make(massKg / 3, 0.020, OptionalDouble.empty(), List.of());
        }
    }

    public LineItem {
        Objects.requireNonNull(name, "name");
        if (!(lengthM > 0 && lengthM < 500 && massKg > 0 && limitKg > 0)) {
            throw new IllegalArgumentException("line " + name + " has a value out of range.");
        }
        if (!(make.endMassKg() <= massKg)) {
            throw new IllegalArgumentException(
                    "endMassKg (" + make.endMassKg() + ") must be part of the line's mass.");
        }
    }

    /** A line of which only this is known. */
    public LineItem(String name, double lengthM, double massKg, double limitKg) {
        this(name, lengthM, massKg, limitKg, Make.assumed(massKg));
    }

    /** Of its mass, what is rope, kg. */
    public double ropeMassKg() {
        return massKg - make.endMassKg();
    }
}
