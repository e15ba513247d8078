package underhook.planner.search;

/**
 * What a day near a known order is looked for.
 *
 * @param flyingPercent a flying minute counts so much of its rate, above 0
 * @param earlyS how long before the wind closes it each lift is to be let go, and before the day or the engine's time
 *     ends the machine is to be down, s
 * @param laterRatio how many seconds of everything one second later than that counts, of each lift
 */
public record Aim(int flyingPercent, long earlyS, int laterRatio) {
    /** The day that costs least. */
    public static final Aim CHEAPEST = counting(100);

    public Aim {
        if (flyingPercent < 1 || earlyS < 0 || laterRatio < 1) {
            throw new IllegalArgumentException(
                    "flyingPercent ("
                            + flyingPercent
                            + ") and laterRatio ("
                            + laterRatio
                            + ") must be above 0, earlyS ("
                            + earlyS
                            + ") not below.");
        }
    }

    /** The day that costs least with a flying minute at so much of its rate. */
    public static Aim counting(int flyingPercent) {
        return new Aim(flyingPercent, 0, 1);
    }

    /** Price of what a day just built does later than is aimed at, cents. */
    long cents(Run run) {
        if (earlyS == 0) {
            return 0;
        }
        DayTable table = run.table;
        long laterS =
                over(run.timeS, table.downS()) + over(run.onTotalS, table.rules.engineOnDayS());
        for (int trip = 0; trip < run.releasedS.length; trip++) {
            if (run.releasedS[trip] >= 0) {
                laterS += over(run.releasedS[trip], table.windowEndS(trip));
            }
        }
        return laterRatio * laterS * Math.max(1, table.rates.minuteCents()) / 60;
    }

    private long over(long atS, long endS) {
        return Math.max(0, atS + earlyS - endS);
    }
}
