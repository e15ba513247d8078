package underhook.core.billing;

import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;

/**
 * What the customer agreed to pay for.
 *
 * @param dayMinimumCents the least that a day costs, whole cents; 0 for none
 */
public record Tariff(String name, String currency, long dayMinimumCents, List<Item> items) {
    /** What is counted. */
    public enum Basis {
        /** Time from take-off to landing. */
        FLYING_TIME,
        /** Time with the engine on. */
        ENGINE_TIME,
        /** Time of the day that the machine stood ready with the engine off. */
        STANDBY_TIME,
        /** Trips with something on the hook. */
        LIFTS,
        /** Poles standing. */
        POLES,
        /** Fuel taken. */
        FUEL_KG,
        /** Once a day. */
        DAY
    }

    /** How time is rounded. */
    public enum Rounding {
        /** To the minute that it is nearest to. */
        NEAREST_MINUTE(60, false),
        /** To whole minutes, a started one counts. */
        STARTED_MINUTE(60, true),
        /** To tenths of an hour, a started one counts. */
        STARTED_TENTH_OF_HOUR(360, true),
        /** To whole hours, a started one counts. */
        STARTED_HOUR(3600, true);

        private final long unitS;
        private final boolean up;

        Rounding(long unitS, boolean up) {
            this.unitS = unitS;
            this.up = up;
        }

        /** Seconds of one unit. */
        public long unitS() {
            return unitS;
        }

        /**
         * How many units a time is.
         *
         * @param timeMillis not negative
         */
        public long units(long timeMillis) {
            long unitMillis = unitS * 1000;
            return up
                    ? (timeMillis + unitMillis - 1) / unitMillis
                    : (timeMillis + unitMillis / 2) / unitMillis;
        }
    }

    /**
     * One line of the tariff.
     *
     * @param centsPerUnit for one unit: a rounding unit of time, a lift, a pole, a kilogram of fuel, a day
     * @param rounding used for times alone
     */
    public record Item(String name, Basis basis, Rounding rounding, long centsPerUnit) {
        public Item {
            Objects.requireNonNull(name, "name");
            if (centsPerUnit < 0) {
                throw new IllegalArgumentException("centsPerUnit must not be negative.");
            }
        }
    }

    public Tariff {
        items = List.copyOf(items);
        if (dayMinimumCents < 0) {
            throw new IllegalArgumentException("dayMinimumCents must not be negative.");
        }
        Set<String> names = new HashSet<>();
        for (Item item : items) {
            if (!names.add(item.name())) {
                throw new IllegalArgumentException("two items are called " + item.name() + ".");
            }
        }
    }
}
