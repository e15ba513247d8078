package underhook.bench;

import underhook.planner.search.DayTable;
import underhook.planner.search.HookChoices;
import underhook.planner.search.Ordered;
import underhook.planner.search.Rates;

/** A day made up from a seed, to be ordered and bounded. */
interface InventedDay {
    /** How many loads hang on a site's hooks; the last is its pole. */
    int LOADS_PER_SITE = 4;

    /** What a minute in the air, standing and of people costs. */
    Rates RATES = new Rates(3500, 1200, 1000);

    /** Twenty times as much for a minute in the air: then it is all that counts. */
    Rates FLYING_ALONE = new Rates(70_000, 1200, 1000);

    /** Loads on hooks as they are flown, at such rates. */
    DayTable table(Rates rates);

    /** Loads on hooks as they are flown. */
    default DayTable table() {
        return table(RATES);
    }

    /** The same with every other way of putting loads on hooks together behind its own trips. */
    default DayTable everyWay() {
        return table();
    }

    /** The ways among which an order of that table may choose. */
    default HookChoices hooks(Ordered found) {
        return HookChoices.asFlown(found);
    }
}
