package underhook.core.job;

import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * One thing to be lifted from one place to another.
 *
 * @param kind name of one of the job's {@link LoadKind}s
 * @param massKg mass as stated, kg; empty when missing
 * @param massTyped mass as the customer wrote it, with its unit
 * @param lengthM longest side, m; a pole's length
 * @param dragAreaM2 drag coefficient times frontal area, m², when the file states it
 * @param dangerousGoods what of it is dangerous goods, as typed; empty for none
 * @param after what must be done before this load may be set down
 * @param combineWith loads that may ride on the same hook trip with this one
 * @param anotherDay whether it is not to be flown on the job's day
 * @param remarks as typed
 */
public record Load(
        LoadId id,
        String kind,
        PlaceId from,
        PlaceId to,
        MassStatus massStatus,
        OptionalDouble massKg,
        String massTyped,
        double lengthM,
        double widthM,
        double heightM,
        OptionalDouble dragAreaM2,
        String material,
        String dangerousGoods,
        List<After> after,
        List<LoadId> combineWith,
        boolean anotherDay,
        String remarks) {
    /**
     * A thing that must have happened first.
     *
     * @param load the load that must have been released
     * @param waitS how long after its release, s, not negative
     */
    public record After(LoadId load, double waitS) {
        public After {
            Objects.requireNonNull(load, "load");
            if (!(waitS >= 0 && waitS < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("waitS (" + waitS + ") must not be negative.");
            }
        }
    }

    public Load {
        after = List.copyOf(after);
        combineWith = List.copyOf(combineWith);
        if (massKg.isPresent() == (massStatus == MassStatus.MISSING)) {
            throw new IllegalArgumentException("massKg and massStatus must agree for " + id + ".");
        }
        if (massKg.isPresent() && !(massKg.getAsDouble() > 0 && massKg.getAsDouble() < 1e5)) {
            throw new IllegalArgumentException(
                    "massKg (" + massKg.getAsDouble() + ") must be above 0 and below 100000.");
        }
        if (!(lengthM > 0 && widthM > 0 && heightM > 0)) {
            throw new IllegalArgumentException("lengths of " + id + " must be above 0.");
        }
    }

    /** Whether any of it is dangerous goods. Such a load rides alone. */
    public boolean isDangerous() {
        return !dangerousGoods.isBlank();
    }

    /** The same with one place instead of another, to come from and to go to. */
    public Load withInstead(PlaceId place, PlaceId other) {
        return new Load(
                id,
                kind,
                from.equals(place) ? other : from,
                to.equals(place) ? other : to,
                massStatus,
                massKg,
                massTyped,
                lengthM,
                widthM,
                heightM,
                dragAreaM2,
                material,
                dangerousGoods,
                after,
                combineWith,
                anotherDay,
                remarks);
    }

    /** The same as weighed, kg. */
    public Load weighing(double otherKg) {
        return new Load(
                id,
                kind,
                from,
                to,
                MassStatus.WEIGHED,
                OptionalDouble.of(otherKg),
                massTyped,
                lengthM,
                widthM,
                heightM,
                dragAreaM2,
                material,
                dangerousGoods,
                after,
                combineWith,
                anotherDay,
                remarks);
    }

    /** The same, left for another day. */
    public Load onAnotherDay() {
        return new Load(
                id,
                kind,
                from,
                to,
                massStatus,
                massKg,
                massTyped,
                lengthM,
                widthM,
                heightM,
                dragAreaM2,
                material,
                dangerousGoods,
                after,
                combineWith,
                true,
                remarks);
    }
}
