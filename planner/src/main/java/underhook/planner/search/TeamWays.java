package underhook.planner.search;

/** The least time in which a team comes from place to place, on foot and by air in any mixture. */
final class TeamWays {
    private final DayTable table;
    private final TeamRow team;
    private final long[][] leastS;
    private final long[] footS;

    TeamWays(DayTable table, int number) {
        this.table = table;
        this.team = table.teams[number];
        int places = table.spots.length;
        long[][] foot = new long[places][places];
        leastS = new long[places][places];
        for (int from = 0; from < places; from++) {
            for (int to = 0; to < places; to++) {
                foot[from][to] = table.walkS[from][to];
                leastS[from][to] = Math.min(foot[from][to], flownS(from, to));
            }
        }
        joinUp(foot);
        joinUp(leastS);
        footS = foot[team.start()];
    }

    private static void joinUp(long[][] wayS) {
        for (int over = 0; over < wayS.length; over++) {
            for (long[] from : wayS) {
                for (int to = 0; to < wayS.length && from[over] < DayTable.NO_WALK_S; to++) {
                    from[to] = Math.min(from[to], from[over] + wayS[over][to]);
                }
            }
        }
    }

    /** Boarded, flown and landed, s; more than any day where that cannot be. */
    private long flownS(int from, int to) {
        if (from == to || !team.landing().contains(from) || !team.landing().contains(to)) {
            return DayTable.NO_WALK_S;
        }
        return 2 * table.rules.boardingS() + (long) Math.floor(leastEmptyS(from, to));
    }

    private double leastEmptyS(int from, int to) {
        double wayS = from == to ? 0 : HourLeast.NONE_S;
        for (int hour = 0; hour < table.slots(); hour++) {
            wayS = Math.min(wayS, table.leastEmptyS(from, to, hour));
        }
        return wayS;
    }

    long wayS(int from, int to) {
        return leastS[from][to];
    }

    /** When it can be at a place at the earliest, s. */
    long fromStartS(int to) {
        return Math.max(table.rules.startS(), team.fromS()) + leastS[team.start()][to];
    }

    /**
     * When the machine can be at a hook-up at the earliest, s, the time for its line not counted: where the team cannot
     * walk to a place, after it was flown.
     */
    long machineFromS(int place, int hookUp) {
        long startS = table.rules.startS();
        if (footS[place] < DayTable.NO_WALK_S) {
            return startS + (long) Math.floor(leastEmptyS(table.rules.startPlace(), hookUp));
        }
        long soonestS = DayTable.NO_WALK_S;
        for (int from = 0; from < footS.length; from++) {
            for (int to = 0; to < footS.length && footS[from] < DayTable.NO_WALK_S; to++) {
                long flownS = flownS(from, to);
                if (flownS < DayTable.NO_WALK_S) {
                    long onS = (long) Math.floor(leastEmptyS(to, hookUp));
                    soonestS = Math.min(soonestS, footS[from] + flownS + onS);
                }
            }
        }
        return Math.max(startS, team.fromS()) + soonestS;
    }
}
