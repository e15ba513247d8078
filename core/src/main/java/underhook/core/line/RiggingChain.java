package underhook.core.line;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;

/**
 * Everything between belly hook and load, from the load upward: each item carries all below it.
 *
 * @param uses how far each item is used, in the order given
 */
public record RiggingChain(List<Use> uses) {
    /**
     * One item.
     *
     * @param limitKg most mass it may carry, kg, above 0
     * @param massKg its own mass, kg, not negative
     * @param carriesItself whether its upper end counts its own mass, as a rope's does
     */
    public record Item(String name, double limitKg, double massKg, boolean carriesItself) {
        public Item {
            Objects.requireNonNull(name, "name");
            if (!(limitKg > 0 && limitKg < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("limitKg (" + limitKg + ") must be above 0.");
            }
            if (!(massKg >= 0 && massKg < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("massKg (" + massKg + ") must not be negative.");
            }
        }
    }

    /**
     * An item and what it carries.
     *
     * @param carriedKg mass that its weakest end carries, kg
     * @param usedRatio carried mass over its limit; above 1 it is overloaded
     */
    public record Use(Item item, double carriedKg, double usedRatio) {}

    public RiggingChain {
        uses = List.copyOf(uses);
        if (uses.isEmpty()) {
            throw new IllegalArgumentException("a chain needs an item.");
        }
    }

    /**
     * Adds up the chain under a load at rest.
     *
     * @param loadMassKg load, kg, above 0
     * @param upward items from the load to the belly hook, at least one
     * @throws IllegalArgumentException if an argument is out of range
     * @source DERIVED static equilibrium
     */
    public static RiggingChain of(double loadMassKg, List<Item> upward) {
        if (!(loadMassKg > 0 && loadMassKg < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("loadMassKg (" + loadMassKg + ") must be above 0.");
        }
        List<Use> uses = new ArrayList<>();
        double below = loadMassKg;
        for (Item item : upward) {
            double withSelf = below + item.massKg();
            double carried = item.carriesItself() ? withSelf : below;
            uses.add(new Use(item, carried, carried / item.limitKg()));
            below = withSelf;
        }
        return new RiggingChain(uses);
    }

    /** The item used furthest; the lower one of two alike. */
    public Use governing() {
        return uses.stream().max(Comparator.comparingDouble(Use::usedRatio)).orElseThrow();
    }

    /** Whether no item carries more than its limit. */
    public boolean isWithinLimits() {
        return governing().usedRatio() <= 1;
    }
}
