package underhook.planner.search;

import java.util.ArrayList;
import java.util.List;

/**
 * The least time on the ground that so much flying needs: breaks, fuelling and, of a whole day, the line.
 *
 * <p>No stretch with the engine on is longer than its limit, so there are so many breaks. What is burnt above a full
 * tank less the reserve is filled in, at most that much at a time; each fuelling takes its own time besides the flow,
 * and after each stop the engine is started. A break holds one fuelling as far as it fits, and may hold the line; all
 * else takes time of its own.
 */
final class LeastStops {
    /** Sums of burnt fuel are off by far less than this, kg. */
    private static final double DUST_KG = 1e-6;

    private final DayRules rules;
    private final FuelRules fuel;
    private final double roomKg;
    private final double moreKg;
    private final long lineS;

    private LeastStops(DayTable table, double moreKg, long lineS) {
        this.rules = table.rules;
        this.fuel = table.fuel;
        this.roomKg = fuel.usableKg() - fuel.reserveKg() - fuel.spreadKg();
        this.moreKg = moreKg;
        this.lineS = lineS;
    }

    /** Among the flying of any part of a day. */
    static LeastStops within(DayTable table) {
        return new LeastStops(table, 0, 0);
    }

    /**
     * Of a whole day; the line is off in the morning, and is fitted before the first trip.
     *
     * @param moreKg burnt besides the flow, the first start among it
     */
    static LeastStops ofDay(DayTable table, double moreKg) {
        return new LeastStops(table, moreKg, table.rules.lineChangeS());
    }

    /** Least seconds on the ground among so many in the air, where no break that must be holds the line. */
    long stopsS(long flownS) {
        long breaks = breaks(flownS);
        return breaks * rules.breakS() + (long) Math.floor(fuellingS(flownS, breaks, 0) + lineS);
    }

    /** The same where one of them does. */
    long sharedS(long flownS) {
        long breaks = breaks(flownS);
        return breaks * rules.breakS() + (long) Math.floor(fuellingS(flownS, breaks, lineS));
    }

    /**
     * Whether one of them may: it comes before the first trip then, and all later flying fits between it and the
     * others.
     *
     * @param laterS what is flown after the line is fitted at least, s
     */
    boolean mayHoldLine(long flownS, long laterS) {
        long breaks = breaks(flownS);
        return breaks > 0 && laterS <= breaks * rules.stretchS();
    }

    /**
     * A day whose first break holds the line.
     *
     * @param lineFromS when that is over at the earliest, s: all other stretches are full at best
     * @param breaks the later ones, in which nothing is let go
     */
    record Held(long lineFromS, List<Break> breaks) {}

    /**
     * A break of every day looked at, whenever in between it is.
     *
     * @param fromS begun at the latest, s
     * @param untilS over at the earliest, s
     */
    record Break(long fromS, long untilS) {}

    /**
     * What holds of every day on which one of them does that is down before any other may be: it has no break more, and
     * where the stretches after the line are nearly full at best, they say when its breaks are.
     *
     * @param laterS what is flown after the line is fitted at least, s
     */
    Held held(long flownS, long laterS) {
        long count = breaks(flownS);
        long stretchS = rules.stretchS();
        long beforeS = Math.max(1, flownS - count * stretchS);
        long lineFromS = rules.startS() + beforeS + Math.max(rules.breakS(), lineS);
        long downS = rules.startS() + flownS + stopsS(flownS);
        List<Break> later = new ArrayList<>();
        boolean isFirst =
                laterS > (count - 1) * stretchS && stopsS(flownS) <= (count + 1) * rules.breakS();
        for (long i = 1; isFirst && i < count; i++) {
            long isFlownS = laterS - (count - i) * stretchS;
            long isLeftS = laterS - i * stretchS + (count - i) * rules.breakS();
            later.add(new Break(downS - isLeftS, lineFromS + isFlownS + i * rules.breakS()));
        }
        return new Held(lineFromS, later);
    }

    private long breaks(long flownS) {
        return Math.max(0, flownS - 1) / rules.stretchS();
    }

    /** Least seconds of fuelling besides the breaks, one of which holds something else for so long. */
    private double fuellingS(long flownS, long breaks, long takenS) {
        if (roomKg <= fuel.startKg()) {
            return 0;
        }
        double burntKg = fuel.burnKgPerS() * flownS + moreKg - roomKg;
        double leastS = Double.POSITIVE_INFINITY;
        for (long fills = 0; fills <= breaks || leastS == Double.POSITIVE_INFINITY; fills++) {
            double filledKg = burntKg + fuel.startKg() * Math.max(breaks, fills);
            if (filledKg <= fills * roomKg + DUST_KG) {
                boolean allHold = fills >= breaks && takenS > 0;
                long free = allHold ? breaks - 1 : Math.min(breaks, fills);
                double fitsKg = free * fitsKg(0) + (allHold ? fitsKg(takenS) : 0);
                double overS = free * overS(0) + (allHold ? overS(takenS) : aloneOverS(takenS));
                double aloneS = fuel.refuelS() * Math.max(0, fills - breaks);
                double flowS = Math.max(0, filledKg - fitsKg) / fuel.refuelKgPerS();
                leastS = Math.min(leastS, overS + aloneS + flowS);
            }
        }
        return leastS;
    }

    /** Most that is filled in a break that holds something else for so long, kg. */
    private double fitsKg(long takenS) {
        double leftS = Math.max(0, rules.breakS() - takenS - fuel.refuelS());
        return Math.min(roomKg, leftS * fuel.refuelKgPerS());
    }

    /** How much longer than a break that is before anything flows, s. */
    private double overS(long takenS) {
        return Math.max(0, takenS + fuel.refuelS() - rules.breakS());
    }

    /** How much longer than a break something that it holds alone is, s. */
    private double aloneOverS(long takenS) {
        return Math.max(0, takenS - rules.breakS());
    }
}
