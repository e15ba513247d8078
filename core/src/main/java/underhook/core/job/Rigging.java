package underhook.core.job;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The gear between belly hook and loads, as the job's list states it.
 *
 * @param breakingFactor least marked breaking strength over load that the operator's profile asks for
 * @param stock what there is
 * @param belly names of the items between belly hook and line, from below upward
 * @param sets how the kinds of load hang on a line
 */
public record Rigging(
        double breakingFactor, List<Gear> stock, List<String> belly, List<SlingSet> sets) {
    /** No gear is listed. @source WAC-296-45 five times the load */
    public static final Rigging NONE = new Rigging(5, List.of(), List.of(), List.of());

    /** What a sling is made of, which says what a hitch leaves of its straight pull. */
    public enum Material {
        WIRE_ROPE,
        CHAIN,
        WEB,
        FIBRE_ROPE,
        STEEL
    }

    /** How a set holds its load. */
    public enum Hitch {
        /** Straight legs from the load's own eyes. */
        VERTICAL,
        /** Round the load and through its own eye. */
        CHOKER,
        /** Under the load, both ends up. */
        BASKET,
        /** Two legs of stated length to two points of a rigid load. */
        BRIDLE
    }

    /**
     * When an item was taken into use, is due for inspection and at the end of its life.
     *
     * @param firstUsedOn day
     * @param dueOn last day without a new inspection
     * @param retireOn last day of its life
     */
    public record Dates(LocalDate firstUsedOn, LocalDate dueOn, LocalDate retireOn) {
        public Dates {
            Objects.requireNonNull(dueOn, "dueOn");
            if (!firstUsedOn.isBefore(retireOn)) {
                throw new IllegalArgumentException(
                        "firstUsedOn (" + firstUsedOn + ") must lie before " + retireOn + ".");
            }
        }
    }

    /**
     * Items of one make and one date.
     *
     * @param count how many there are
     * @param limitKg most mass one may carry straight, its maker's safety factor within, kg
     * @param breakingN marked least breaking strength, N, when the tag gives it
     * @param massKg of one, kg
     * @param dates empty when nobody read the tag
     */
    public record Gear(
            String name,
            int count,
            Material material,
            OptionalDouble limitKg,
            OptionalDouble breakingN,
            double massKg,
            Optional<Dates> dates) {
        public Gear {
            Objects.requireNonNull(name, "name");
            Objects.requireNonNull(material, "material");
            if (count < 1 || !(massKg >= 0) || (limitKg.isEmpty() && breakingN.isEmpty())) {
                throw new IllegalArgumentException("gear " + name + " has a value out of range.");
            }
            if (!limitKg.stream().allMatch(kg -> kg > 0)
                    || !breakingN.stream().allMatch(newton -> newton > 0)) {
                throw new IllegalArgumentException("gear " + name + " must carry something.");
            }
        }
    }

    /**
     * Two legs to two points of a rigid load.
     *
     * @param length1M leg to the point nearer the load's butt or front, m
     * @param length2M the other leg, m
     * @param at1Fraction that point from the butt over the load's length
     * @param at2Fraction the other point
     */
    public record Legs2(double length1M, double length2M, double at1Fraction, double at2Fraction) {
        public Legs2 {
            if (!(length1M > 0
                    && length2M > 0
                    && at1Fraction >= 0
                    && at1Fraction < at2Fraction
                    && at2Fraction <= 1)) {
                throw new IllegalArgumentException("a bridle's legs are out of range.");
            }
        }
    }

    /**
     * How loads of some kinds hang on a line.
     *
     * @param name of the set
     * @param kinds kinds of load it is for
     * @param hitch how it holds the load
     * @param legs how many legs carry, 1 for a single sling; a bridle has two
     * @param angleRad legs above the horizontal, rad
     * @param rigid whether the load cannot give
     * @param leg name of the item that makes one leg
     * @param upward names of the items from the legs up to the remote hook
     * @param bridle lengths and points of a bridle; empty for other hitches
     */
    public record SlingSet(
            String name,
            List<String> kinds,
            Hitch hitch,
            int legs,
            double angleRad,
            boolean rigid,
            String leg,
            List<String> upward,
            Optional<Legs2> bridle) {
        public SlingSet {
            Objects.requireNonNull(name, "name");
            kinds = List.copyOf(kinds);
            upward = List.copyOf(upward);
            if (legs < 1
                    || legs > 8
                    || !(angleRad >= Math.PI / 6 - 1e-9 && angleRad <= Math.PI / 2)) {
                throw new IllegalArgumentException("set " + name + " has legs out of range.");
            }
            if (bridle.isPresent() != (hitch == Hitch.BRIDLE)) {
                throw new IllegalArgumentException("set " + name + " and its bridle disagree.");
            }
        }
    }

    public Rigging {
        stock = List.copyOf(stock);
        belly = List.copyOf(belly);
        sets = List.copyOf(sets);
        if (!(breakingFactor >= 1 && breakingFactor < 100)) {
            throw new IllegalArgumentException(
                    "breakingFactor (" + breakingFactor + ") must lie in [1, 100).");
        }
    }

    /** The item of a name; throws when the list has none. */
    public Gear getGear(String name) {
        return stock.stream()
                .filter(gear -> gear.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no gear " + name + " in stock."));
    }

    /** How a kind of load hangs; empty when the list does not say. */
    public Optional<SlingSet> findSet(String kind) {
        return sets.stream().filter(set -> set.kinds().contains(kind)).findFirst();
    }
}
