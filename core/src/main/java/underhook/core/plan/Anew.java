package underhook.core.plan;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.OptionalLong;

/**
 * What an order costs that was made anew while the day was flown: its rest, and the change.
 *
 * @param instead id of the plan that it replaces
 * @param fromAt when the machine is free for it; what was begun before does not count as rest
 * @param rest price from then on
 * @param moreFlightS time in the air of the whole day more than in the plan replaced, s; less is negative
 * @param laterS how much later the day ends than there, s; earlier is negative
 * @param moreCents how much dearer the whole day is than there; empty where that plan has no price
 * @param readings what the gauge said, for this order and those before it, in time order
 * @param told where crews were said to be, for this order and those before it, as far as it holds
 */
public record Anew(
        String instead,
        Instant fromAt,
        DayPrice rest,
        double moreFlightS,
        double laterS,
        OptionalLong moreCents,
        List<Reading> readings,
        List<ToldPlace> told) {
    /** Fuel as read while the day was flown: it holds whatever was reckoned. */
    public record Reading(Instant at, double fuelKg) {
        public Reading {
            Objects.requireNonNull(at, "at");
        }
    }

    public Anew {
        Objects.requireNonNull(instead, "instead");
        Objects.requireNonNull(fromAt, "fromAt");
        Objects.requireNonNull(rest, "rest");
        readings = List.copyOf(readings);
        told = List.copyOf(told);
    }
}
