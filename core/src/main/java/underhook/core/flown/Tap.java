package underhook.core.flown;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;

/**
 * One tap of one person.
 *
 * @param id made on the device at the tap; a tap that arrives twice counts once
 * @param at when it was tapped, by the device's clock
 * @param by who tapped, as that person is called on the day
 * @param device from which it came
 * @param loads which loads it is about, in the order of release
 * @param place where it was, when it was stated
 * @param amount mass for a load hooked or fuel taken, kg; length for a line, m; people for the cabin
 * @param undoes the tap that this one takes back
 * @param note as typed
 */
public record Tap(
        String id,
        Instant at,
        String by,
        String device,
        TapKind kind,
        List<LoadId> loads,
        Optional<PlaceId> place,
        Amount amount,
        Optional<String> undoes,
        String note) {
    /**
     * A number that goes with a tap.
     *
     * @param massKg mass read on the load cell or fuel after refuelling, kg, not negative
     * @param lengthM length of the line, m, above 0
     * @param people how many people, not negative; 0 when it is not about people
     */
    public record Amount(OptionalDouble massKg, OptionalDouble lengthM, int people) {
        /** No number. */
        public static final Amount NONE =
                new Amount(OptionalDouble.empty(), OptionalDouble.empty(), 0);

        public Amount {
            boolean good =
                    people >= 0
                            && people < 100
                            && (massKg.isEmpty()
                                    || (massKg.getAsDouble() >= 0 && massKg.getAsDouble() < 1e5))
                            && (lengthM.isEmpty()
                                    || (lengthM.getAsDouble() > 0 && lengthM.getAsDouble() < 500));
            if (!good) {
                throw new IllegalArgumentException("an amount is out of range.");
            }
        }

        /** A mass, kg. */
        public static Amount ofMass(double massKg) {
            return new Amount(OptionalDouble.of(massKg), OptionalDouble.empty(), 0);
        }

        /** A line's length, m. */
        public static Amount ofLine(double lengthM) {
            return new Amount(OptionalDouble.empty(), OptionalDouble.of(lengthM), 0);
        }

        /** So many people. */
        public static Amount ofPeople(int people) {
            return new Amount(OptionalDouble.empty(), OptionalDouble.empty(), people);
        }
    }

    public Tap {
        if (id.isBlank() || by.isBlank() || device.isBlank()) {
            throw new IllegalArgumentException("id, by and device must not be blank.");
        }
        Objects.requireNonNull(at, "at");
        loads = List.copyOf(loads);
        if (undoes.isPresent() != (kind == TapKind.UNDONE)) {
            throw new IllegalArgumentException("UNDONE, and only it, names a tap it takes back.");
        }
    }

    /** The same at another time. */
    public Tap withAt(Instant other) {
        return at.equals(other)
                ? this
                : new Tap(id, other, by, device, kind, loads, place, amount, undoes, note);
    }
}
