package underhook.core.line;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.unit.Ranges;

/**
 * Everything between belly hook and load, from the load upward: each item carries all below it.
 *
 * @param uses how far each item is used, in the order given
 */
public record RiggingChain(List<Use> uses) {
    /**
     * What an item's tag says.
     *
     * @param firstUsedOn when it was taken into use
     * @param dueOn last day on which it may be used without a new inspection
     * @param retireOn last day of its life
     */
    public record Tag(LocalDate firstUsedOn, LocalDate dueOn, LocalDate retireOn) {
        public Tag {
            Objects.requireNonNull(dueOn, "dueOn");
            if (!firstUsedOn.isBefore(retireOn)) {
                throw new IllegalArgumentException(
                        "firstUsedOn (" + firstUsedOn + ") must lie before " + retireOn + ".");
            }
        }

        /** Whole years in use; 0 before it is taken into use. */
        public int ageYears(LocalDate on) {
            return Math.max(0, firstUsedOn.until(on).getYears());
        }
    }

    /**
     * One item.
     *
     * @param limitKg most mass it may carry as it is rigged, safety factor within, kg, above 0
     * @param massKg its own mass, kg, not negative
     * @param carriesItself whether its upper end counts its own mass, as a rope's does
     * @param tag what its tag says; empty when it has none or nobody looked
     */
    public record Item(
            String name, double limitKg, double massKg, boolean carriesItself, Optional<Tag> tag) {
        public Item {
            Objects.requireNonNull(name, "name");
            Objects.requireNonNull(tag, "tag");
            Ranges.requirePositive(limitKg, "limitKg");
            Ranges.requireNotNegative(massKg, "massKg");
        }

        /** An item whose tag nobody read. */
        public static Item ofUntagged(
                String name, double limitKg, double massKg, boolean carriesItself) {
            return new Item(name, limitKg, massKg, carriesItself, Optional.empty());
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
     * @param loadMassKg load, kg, above 0; the heavier bound is the safe side
     * @param upward items from the load to the belly hook, at least one
     * @throws IllegalArgumentException if an argument is out of range
     * @source DERIVED static equilibrium
     */
    public static RiggingChain of(double loadMassKg, List<Item> upward) {
        Ranges.requirePositive(loadMassKg, "loadMassKg");
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

    /** Most load that every item still carries, kg; not above 0 when the chain's own mass is too much. */
    public double mostLoadKg() {
        Use lowest = uses.get(0);
        double loadKg =
                lowest.carriedKg() - (lowest.item().carriesItself() ? lowest.item().massKg() : 0);
        double most = Double.POSITIVE_INFINITY;
        for (Use use : uses) {
            most = Math.min(most, use.item().limitKg() - (use.carriedKg() - loadKg));
        }
        return most;
    }

    /**
     * What must be said of the chain on a day: STOP for overload, for an inspection that is due and for an
     * item past its life; CAUTION for a tag that nobody read.
     *
     * @param subject id of the load
     */
    public List<Finding> findings(String subject, LocalDate on) {
        List<Finding> findings = new ArrayList<>();
        if (!isWithinLimits()) {
            findings.add(overload(subject, governing()));
        }
        for (Use use : uses) {
            Item item = use.item();
            if (item.tag().isEmpty()) {
                findings.add(
                        dated(
                                FindingCode.RIGGING_UNDATED,
                                Severity.CAUTION,
                                subject,
                                item.name() + " has no known inspection date. Read its tag."));
                continue;
            }
            Tag tag = item.tag().get();
            if (on.isAfter(tag.dueOn())) {
                findings.add(
                        dated(
                                FindingCode.RIGGING_EXPIRED,
                                Severity.STOP,
                                subject,
                                item.name() + " was due for inspection on " + tag.dueOn() + "."));
            }
            if (on.isAfter(tag.retireOn())) {
                findings.add(
                        dated(
                                FindingCode.RIGGING_EXPIRED,
                                Severity.STOP,
                                subject,
                                item.name() + " is past its life since " + tag.retireOn() + "."));
            }
        }
        return findings;
    }

    private static Finding overload(String subject, Use use) {
        String carried = String.format(Locale.ROOT, "%.0f", Math.ceil(use.carriedKg()));
        String limit = String.format(Locale.ROOT, "%.0f", Math.floor(use.item().limitKg()));
        return new Finding(
                FindingCode.RIGGING_LIMIT,
                Severity.STOP,
                subject,
                carried,
                limit,
                "kg",
                "MACHINE",
                use.item().name() + " carries " + carried + " kg and may carry " + limit + " kg.");
    }

    private static Finding dated(
            FindingCode code, Severity severity, String subject, String message) {
        return Finding.of(code, severity, subject, "PRACTICE", message);
    }
}
