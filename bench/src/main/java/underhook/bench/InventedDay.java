package underhook.bench;

import underhook.planner.search.DayTable;
import underhook.planner.search.HookChoices;
import underhook.planner.search.Ordered;

/** A day made up from a seed, to be ordered and bounded. */
interface InventedDay {
    /** How many loads hang on a site's hooks; the last is its pole. */
    int LOADS_PER_SITE = 4;

    /** Loads on hooks as they are flown. */
    DayTable table();

    /** The same with every other way of putting loads on hooks together behind its own trips. */
    default DayTable everyWay() {
        return table();
    }

    /** The ways among which an order of that table may choose. */
    default HookChoices hooks(Ordered found) {
        return HookChoices.asFlown(found);
    }
}
