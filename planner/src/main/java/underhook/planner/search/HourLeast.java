package underhook.planner.search;

import java.util.Arrays;

/**
 * The least that each trip and each empty way takes, begun in each hour, over every line.
 *
 * <p>At first only what no way goes below is known; a figure is made exact, by asking for the ways
 * themselves, when it turns out to matter. Both hold for a bound; exact ones make it tight.
 */
final class HourLeast {
    /** More than any way takes, s; there is none. */
    static final double NONE_S = 1e7;

    final DayTable table;
    final int hours;
    private final Earliest earliest;
    private final boolean[] isLeft;
    private final boolean[] isSought;

    /** Whether anything may be let go at a place in an hour, or just before. */
    private final boolean[][] isWorked;

    private final double[][] tripS;
    private final boolean[][] tripExact;
    private final double[][][] emptyS;
    private final boolean[][][] emptyExact;

    HourLeast(DayTable table, boolean[] placed, Earliest earliest) {
        this.table = table;
        this.hours = table.slots();
        this.earliest = earliest;
        int places = table.spots.length;
        this.tripS = new double[table.trips.length][hours];
        this.tripExact = new boolean[table.trips.length][hours];
        this.emptyS = new double[places][places][];
        this.emptyExact = new boolean[places][places][hours];
        this.isLeft = new boolean[places];
        this.isSought = new boolean[places];
        this.isWorked = new boolean[places][hours];
        for (int place = 0; place < places; place++) {
            isLeft[place] = table.spots[place].ground() || place == table.rules.startPlace();
            isSought[place] = table.spots[place].ground();
        }
        for (int k = 0; k < table.trips.length; k++) {
            isLeft[table.trips[k].to()] |= placed[k];
            isSought[table.trips[k].from()] |= placed[k];
            for (int hour = 0; hour < hours && placed[k]; hour++) {
                boolean may = isTimely(k, hour, untilNextS(hour)) && table.isOpen(k, hour);
                tripS[k][hour] = may ? fixedS(k) + table.leastLoadedS(k, hour) : NONE_S;
                tripExact[k][hour] = !may;
                // Hooked up in that hour, let go in it or in the next; the machine leaves at once.
                for (int later = hour; may && later < Math.min(hour + 3, hours); later++) {
                    isWorked[table.trips[k].to()][later] = true;
                }
            }
        }
    }

    private long untilNextS(int hour) {
        return table.slotUntilS(Math.min(hour + 1, hours - 1));
    }

    /** Whether a release by then is not too early, and hooking up in that hour not too late. */
    private boolean isTimely(int k, int hour, long lastReleaseS) {
        return lastReleaseS > earliest.releaseS(k)
                && table.slotFromS(hour) < table.rules.endS()
                && table.slotUntilS(hour) > table.rules.startS();
    }

    private double fixedS(int k) {
        return table.trips[k].hookUpS() + table.trips[k].setDownS();
    }

    /** From hooking up to the last release, s. */
    double tripS(int k, int hour) {
        return tripS[k][hour];
    }

    /** An empty way, with what turning in takes, s. */
    double emptyS(int from, int to, int hour) {
        double[] row = emptyS[from][to];
        if (row == null) {
            row = new double[hours];
            Arrays.fill(row, NONE_S);
            for (int slot = 0; slot < hours; slot++) {
                boolean left = !table.spots[from].site() || isWorked[from][slot];
                if (left && isDay(slot) && isFlown(from, to)) {
                    row[slot] = extraS(from) + table.leastEmptyS(from, to, slot);
                }
            }
            emptyS[from][to] = row;
        }
        return row[hour];
    }

    /** The longest that any empty way is counted as, s. */
    double longestEmptyS() {
        double longest = 0;
        for (double[][] from : emptyS) {
            for (double[] row : from) {
                for (int hour = 0; row != null && hour < hours; hour++) {
                    longest = row[hour] < NONE_S ? Math.max(longest, row[hour]) : longest;
                }
            }
        }
        return longest;
    }

    /** Whether the machine ever flies empty from one to the other: to hook up, to land, to end. */
    private boolean isFlown(int from, int to) {
        return isLeft[from] && isSought[to];
    }

    private boolean isDay(int slot) {
        return table.slotFromS(slot) < table.rules.endS()
                && table.slotUntilS(slot) > table.rules.startS();
    }

    /** Who leaves a site comes from a set-down there, or from nothing that is ever planned. */
    private double extraS(int from) {
        return table.spots[from].site() ? table.rules.returnExtraS() : 0;
    }

    /** The line is fitted and taken off on the ground, so from and to a site one is flown with. */
    private int firstLine(int from, int to) {
        return table.spots[from].site() || table.spots[to].site() ? 0 : DayTable.NONE;
    }

    /** Makes a trip's figure exact; whether it was not. */
    boolean makeTripExact(int k, int hour) {
        if (tripExact[k][hour]) {
            return false;
        }
        tripExact[k][hour] = true;
        int cuts = table.cuts();
        double least = NONE_S;
        for (int line : table.lines) {
            for (int later = hour; later < Math.min(hour + 2, hours); later++) {
                int loadedS =
                        table.trips[k].linesAllowed().get(line) && table.isOpen(k, later)
                                ? table.loadedS(k, line, hour, later)
                                : DayTable.NONE;
                boolean may =
                        loadedS >= 0
                                && isTimely(
                                        k,
                                        hour,
                                        table.slotUntilS(hour)
                                                + loadedS
                                                + table.trips[k].firstSetDownS())
                                && table.mostFuelKg(k, line, hour, later) > 0;
                least = may ? Math.min(least, loadedS + fixedS(k)) : least;
            }
        }
        if (table.cuts() > cuts) {
            return false;
        }
        tripS[k][hour] = Math.max(tripS[k][hour], least);
        return true;
    }

    /** Makes an empty way's figure exact; whether it was not. */
    boolean makeEmptyExact(int from, int to, int hour) {
        double known = emptyS(from, to, hour);
        if (emptyExact[from][to][hour] || known >= NONE_S) {
            return false;
        }
        emptyExact[from][to][hour] = true;
        int cuts = table.cuts();
        double least = NONE_S;
        for (int line = firstLine(from, to); line < table.lines.length; line++) {
            int legS = table.emptyS(from, to, line, hour);
            least = legS < 0 ? least : Math.min(least, legS + extraS(from));
        }
        if (table.cuts() > cuts) {
            return false;
        }
        emptyS[from][to][hour] = Math.max(known, least);
        return true;
    }
}
