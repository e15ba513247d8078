package underhook.planner.search;

/**
 * How much flying hours in a row hold, breaks and fuelling taken off, and what a second of it is priced.
 *
 * <p>Besides what fits between their ends, the hook-up under way when they begin and the piece under way
 * when they end may reach out of them.
 */
final class HourRoom {
    private final DayTable table;
    private final int hours;
    private final int[] first;
    private final int[] last;
    private final double[] roomS;
    private final LeastStops stops;
    private double spillS;

    HourRoom(DayTable table) {
        this.table = table;
        this.hours = table.slots();
        this.stops = LeastStops.within(table);
        int spans = hours * (hours + 1) / 2;
        this.first = new int[spans];
        this.last = new int[spans];
        this.roomS = new double[spans];
        int span = 0;
        for (int from = 0; from < hours; from++) {
            for (int to = from; to < hours; to++) {
                first[span] = from;
                last[span] = to;
                roomS[span] = mostFlownS(lengthS(from, to));
                span++;
            }
        }
    }

    private long lengthS(int from, int to) {
        long beginS = Math.max(table.slotFromS(from), table.rules.startS());
        long endS = Math.min(table.slotUntilS(to), table.rules.endS());
        return Math.max(0, endS - beginS);
    }

    /** Most seconds in the air within so many seconds on end. */
    private long mostFlownS(long lengthS) {
        long low = 0;
        long high = lengthS;
        while (low < high) {
            long middle = (low + high + 1) / 2;
            if (middle + stops.stopsS(middle) <= lengthS) {
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        return low;
    }

    int count() {
        return first.length;
    }

    /** How far pieces may reach out of the hours they begin in, s. */
    void setSpillS(double newSpillS) {
        spillS = newSpillS;
    }

    /** What a second begun in each hour costs, itself counted as 1. */
    double[] hourFactor(double[] roomRatio) {
        double[] hourFactor = new double[hours];
        java.util.Arrays.fill(hourFactor, 1);
        for (int span = 0; span < roomRatio.length; span++) {
            if (roomRatio[span] > 0) {
                for (int hour = first[span]; hour <= last[span]; hour++) {
                    hourFactor[hour] += roomRatio[span];
                }
            }
        }
        return hourFactor;
    }

    /**
     * Prices at which a second costs what it takes more in some other hour, up to one level for all hours: what takes
     * less than that is dearer by as much.
     *
     * @param allS how long the whole day's flying takes, all of it flown in one hour
     * @param levelS up to where hours are made equally dear
     */
    double[] levelledRatio(double[] allS, double levelS) {
        double[] more = new double[hours];
        for (int hour = 0; hour < hours; hour++) {
            more[hour] = allS[hour] > 0 ? Math.max(0, levelS / allS[hour] - 1) : 0;
        }
        double[] roomRatio = new double[first.length];
        for (int span = 0; span < first.length; span++) {
            boolean isHour = first[span] == last[span];
            while (isHour && more[first[span]] > 0) {
                int until = first[span];
                double least = more[until];
                while (until + 1 < hours && more[until + 1] > 0) {
                    least = Math.min(least, more[++until]);
                }
                roomRatio[span + until - first[span]] += least;
                for (int hour = first[span]; hour <= until; hour++) {
                    more[hour] = Math.max(0, more[hour] - least);
                }
            }
        }
        return roomRatio;
    }

    /** What all that the hours hold is priced. */
    double costS(double[] roomRatio) {
        double sum = 0;
        for (int span = 0; span < roomRatio.length; span++) {
            sum += roomRatio[span] * (roomS[span] + spillS);
        }
        return sum;
    }

    /** Moves roomRatio toward what the loadS asks for; false when they are as good as they get. */
    boolean step(double[] roomRatio, double[] loadS, double gapS) {
        double[] lacks = new double[roomRatio.length];
        double norm = 0;
        for (int span = 0; span < roomRatio.length; span++) {
            double sum = 0;
            for (int hour = first[span]; hour <= last[span]; hour++) {
                sum += loadS[hour];
            }
            lacks[span] = sum - roomS[span] - spillS;
            if (lacks[span] > 0 || roomRatio[span] > 0) {
                norm += lacks[span] * lacks[span];
            }
        }
        if (norm < 1) {
            return false;
        }
        for (int span = 0; span < roomRatio.length; span++) {
            roomRatio[span] = Math.max(0, roomRatio[span] + lacks[span] * gapS / norm);
        }
        return true;
    }
}
