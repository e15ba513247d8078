package underhook.planner.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The least that each trip and each empty way takes, begun in each hour, over every line.
 *
 * <p>At first only what no way goes below is known; a figure is made exact, by asking for the ways
 * themselves, when it turns out to matter. Both hold for a bound; exact ones make it tight.
 */
final class HourLeast {
    /** More than any way takes, s; there is none. */
    static final double NONE_S = 1e7;

    /** Sums of seconds in floating point may be off by far less than this, s. */
    static final double ROUNDING_S = 0.01;

    final DayTable table;
    final int hours;
    private final Earliest earliest;
    private final boolean[] isLeft;
    private final boolean[] isSought;

    /** Whether people may be flown from there or to there. */
    private final boolean[] isLanding;

    /** Whether anything may be let go at a place in an hour, or just before. */
    private final boolean[][] isWorked;

    private final LiftHours lifts;

    /** In which hour each trip is let go at the latest, by that of its hook-up. */
    private final int[][] lastHour;

    private final double[][] tripS;
    private final boolean[][] tripExact;
    private final double[][][] emptyS;
    private final boolean[][][] emptyExact;
    private final List<Figure> wanted = new ArrayList<>();
    private final Lanes lanes;
    private int exactFigures;

    HourLeast(DayTable table, boolean[] placed, Earliest earliest, HeldDay held) {
        this.table = table;
        this.hours = table.slots();
        this.earliest = earliest;
        int places = table.spots.length;
        this.lifts = new LiftHours(table);
        this.lanes = Lanes.of(table);
        this.lastHour = new int[table.trips.length][hours];
        this.tripS = new double[table.trips.length][hours];
        this.tripExact = new boolean[table.trips.length][hours];
        this.emptyS = new double[places][places][];
        this.emptyExact = new boolean[places][places][hours];
        this.isLeft = new boolean[places];
        this.isSought = new boolean[places];
        this.isLanding = new boolean[places];
        this.isWorked = new boolean[places][hours];
        for (TeamRow team : table.teams) {
            team.landing().stream().filter(at -> at >= 0).forEach(at -> isLanding[at] = true);
        }
        for (int place = 0; place < places; place++) {
            isSought[place] = table.spots[place].ground() || isLanding[place];
            isLeft[place] = isSought[place] || place == table.rules.startPlace();
        }
        for (int k = 0; k < table.trips.length; k++) {
            isLeft[table.trips[k].to()] |= placed[k];
            isSought[table.trips[k].from()] |= placed[k];
            for (int hour = 0; hour < hours && placed[k]; hour++) {
                int last = lifts.last(k, hour);
                boolean may =
                        last >= 0
                                && held.mayHook(k, hour)
                                && isTimely(k, hour, table.slotUntilS(last));
                tripS[k][hour] = may ? fixedS(k) + table.leastLoadedS(k, hour) : NONE_S;
                tripExact[k][hour] = !may;
                lastHour[k][hour] = may ? last : hour;
                // The machine leaves at once.
                for (int later = hour; may && later <= last; later++) {
                    isWorked[table.trips[k].to()][later] = true;
                }
            }
        }
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

    /** Whether the machine may be at a place without a load that it has just let go there. */
    boolean stands(int place) {
        return !table.spots[place].site() || isLanding[place] || place == table.rules.startPlace();
    }

    /** The last hour in which a trip is let go that is hooked up in one. */
    int lastHour(int k, int hour) {
        return lastHour[k][hour];
    }

    /** How many figures were made exact that decide on ways from place to place. */
    int exactFigures() {
        return exactFigures;
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
                boolean left = stands(from) || isWorked[from][slot];
                if (left && isDay(slot) && isFlown(from, to)) {
                    row[slot] = extraS(from) + leastEmptyS(from, to, slot);
                }
            }
            emptyS[from][to] = row;
        }
        return row[hour];
    }

    /** What is known at once is known of ways with the line on from and to sites; not where people are landed. */
    private double leastEmptyS(int from, int to, int slot) {
        boolean known = isSlung(from) == isSite(from) && isSlung(to) == isSite(to);
        return known ? table.leastEmptyS(from, to, slot) : 0;
    }

    private boolean isSite(int place) {
        return table.spots[place].site();
    }

    /** Whether the machine is there with the line on alone: it is fitted and taken off on the ground. */
    private boolean isSlung(int place) {
        return isSite(place) && !isLanding[place];
    }

    /** Whether the machine ever flies empty from one to the other: to hook up, to land, to end. */
    private boolean isFlown(int from, int to) {
        return isLeft[from] && isSought[to];
    }

    private boolean isDay(int slot) {
        return table.slotFromS(slot) < table.rules.endS()
                && table.slotUntilS(slot) > table.rules.startS();
    }

    /** Who leaves a site where nobody is landed comes from a set-down there, or from nothing that is ever planned. */
    private double extraS(int from) {
        return isSlung(from) ? table.rules.returnExtraS() : 0;
    }

    /** Wants a trip's figure exact; whether it was not. */
    boolean wantTrip(int k, int hour) {
        if (tripExact[k][hour]) {
            return false;
        }
        tripExact[k][hour] = true;
        return wanted.add(new TripFigure(k, hour));
    }

    /** Wants an empty way's figure exact; whether it was not. */
    boolean wantEmpty(int from, int to, int hour) {
        if (emptyExact[from][to][hour] || emptyS(from, to, hour) >= NONE_S) {
            return false;
        }
        emptyExact[from][to][hour] = true;
        return wanted.add(new EmptyFigure(from, to, hour));
    }

    /** Makes exact what is wanted; whether that was not given up because the time was over. */
    boolean makeExact() {
        int cuts = table.cuts();
        if (!wanted.isEmpty()) {
            lanes.each(0, wanted.size(), (i, lane) -> wanted.get(i).ask(lane.run().table));
        }
        boolean all = table.cuts() == cuts;
        if (all) {
            wanted.forEach(Figure::settle);
        }
        wanted.clear();
        return all;
    }

    /** A figure that is to be exact. */
    private interface Figure {
        /** Asks a table; several at once, each another. */
        void ask(DayTable lane);

        /** Takes the answer over. */
        void settle();
    }

    private final class TripFigure implements Figure {
        private final int k;
        private final int hour;
        private double leastS = NONE_S;
        private int last;

        TripFigure(int k, int hour) {
            this.k = k;
            this.hour = hour;
            this.last = hour;
        }

        @Override
        public void ask(DayTable lane) {
            LiftHours hours = new LiftHours(lane);
            for (int later = hour; later <= lastHour[k][hour]; later++) {
                for (int line : table.lines) {
                    if (hours.mayBe(k, line, hour, later)) {
                        ask(hours, line, later);
                    }
                }
            }
        }

        private void ask(LiftHours hours, int line, int later) {
            // Whoever hovers so much later has flown longer than is known to be enough: that way
            // need not be found.
            if (hours.leastLoadedS(k, hour, later) + fixedS(k) >= leastS) {
                last = later;
                return;
            }
            int loadedS = hours.loadedS(k, line, hour, later);
            long lastReleaseS = table.slotUntilS(hour) + loadedS + table.trips[k].firstSetDownS();
            if (loadedS >= 0 && isTimely(k, hour, lastReleaseS)) {
                leastS = Math.min(leastS, loadedS + fixedS(k));
                last = later;
            }
        }

        @Override
        public void settle() {
            tripS[k][hour] = Math.max(tripS[k][hour], leastS);
            exactFigures += last < lastHour[k][hour] ? 1 : 0;
            lastHour[k][hour] = last;
        }
    }

    private final class EmptyFigure implements Figure {
        private final int from;
        private final int to;
        private final int hour;
        private double leastS = NONE_S;

        EmptyFigure(int from, int to, int hour) {
            this.from = from;
            this.to = to;
            this.hour = hour;
        }

        @Override
        public void ask(DayTable lane) {
            int first = isSlung(from) || isSlung(to) ? 0 : DayTable.NONE;
            for (int line = first; line < table.lines.length; line++) {
                int legS = lane.emptyS(from, to, line, hour);
                leastS = legS < 0 ? leastS : Math.min(leastS, legS + extraS(from));
            }
        }

        @Override
        public void settle() {
            emptyS[from][to][hour] = Math.max(emptyS(from, to, hour), leastS);
            exactFigures++;
        }
    }
}
