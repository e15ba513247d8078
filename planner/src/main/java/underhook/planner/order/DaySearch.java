package underhook.planner.order;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.BooleanSupplier;

/**
 * Improves a day's wishes by seeded local search of a fixed number of days built.
 *
 * <p>A worse day is sometimes taken, less often as the search goes on; the best day ever built is
 * returned. The price of a day is in whole cents; ties keep the earlier day.
 */
final class DaySearch {
    /** Days built in one search: about the same work whatever the machine. */
    static final int DAYS = 2000;

    private static final long DROPPED_CENTS = 100_000_000L;
    private static final long TOO_LATE_S = 3600;
    private static final long EARLY_CENTS_PER_MINUTE = 300;
    private static final long BIAS_S = 900;

    /** Waits longer than this are breaks anyhow. */
    private static final long NO_EARLY_REST_S = 1800;

    private static final double REFUEL_STEP_KG = 20;

    private final DayModel model;
    private final DayBuilder builder;
    private final List<Trip> trips;
    private final People people;

    DaySearch(DayModel model, DayBuilder builder, List<Trip> trips, People people) {
        this.model = model;
        this.builder = builder;
        this.trips = trips;
        this.people = people;
    }

    /** What came of a search. */
    record Found(DayState day, boolean cutShort, int days) {}

    Found search(long seed, BooleanSupplier stop, DayPlanner.Progress progress) {
        SplittableRandom random = new SplittableRandom(seed);
        Wishes now = firstWishes();
        DayState day = builder.build(now);
        DayState best = day;
        long bestPrice = priceCents(day);
        long guide = guideCents(day);
        long bestGuide = guide;
        Wishes bestWishes = now;
        int built = 1;
        boolean cut = false;
        while (built < DAYS) {
            if (stop.getAsBoolean()) {
                cut = true;
                break;
            }
            Wishes changed = change(now, random);
            DayState other = builder.build(changed);
            long otherPrice = priceCents(other);
            built++;
            long otherGuide = guideCents(other);
            double heat = 6000.0 * (1 - (double) built / DAYS);
            boolean take =
                    otherGuide <= guide
                            || random.nextDouble()
                                    < Math.exp((guide - otherGuide) / Math.max(1, heat));
            if (take) {
                now = changed;
                guide = otherGuide;
            }
            if (otherGuide < bestGuide) {
                bestGuide = otherGuide;
                bestWishes = changed;
            }
            if (otherPrice < bestPrice) {
                best = other;
                bestPrice = otherPrice;
            }
            if (built % 200 == 0) {
                now = bestWishes;
                guide = bestGuide;
                progress.step("searching the order of the day", (double) built / DAYS);
            }
        }
        return new Found(best, cut, built);
    }

    /** The price of a day, whole cents. */
    long priceCents(DayState day) {
        long dropped = 0;
        for (boolean one : day.dropped) {
            dropped += one ? 1 : 0;
        }
        long wholeS = day.timeS - builder.dayStartS();
        var costs = model.rules.costs();
        long flying = costs.flyingCents() * day.flightS / 60;
        long standing = costs.standingCents() * Math.max(0, wholeS - day.flightS) / 60;
        long ground = costs.peopleCents() * wholeS / 60;
        return Math.addExact(
                Math.multiplyExact(dropped, DROPPED_CENTS),
                Math.addExact(flying, Math.addExact(standing, ground)));
    }

    /**
     * What the search follows: the price, and a push to do early what the wind closes, so that a day in
     * which a lift just fails leads to one in which it just fits.
     */
    private long guideCents(DayState day) {
        long push = 0;
        for (int k = 0; k < trips.size(); k++) {
            if (builder.isWindowed(k)) {
                long doneS =
                        day.releasedS[k] >= 0
                                ? day.releasedS[k]
                                : builder.windowEndS(k) + TOO_LATE_S;
                push += (doneS - builder.dayStartS()) * EARLY_CENTS_PER_MINUTE / 60;
            }
        }
        return Math.addExact(priceCents(day), push);
    }

    /** In the order of the files: sites as each crew lists them, the first crew that serves one. */
    private Wishes firstWishes() {
        List<List<Integer>> orders = new ArrayList<>();
        for (int team = 0; team < people.teams.size(); team++) {
            orders.add(new ArrayList<>());
        }
        for (int team = 0; team < people.teams.size(); team++) {
            List<Integer> wanted = new ArrayList<>();
            people.teams.get(team).serves().forEach(id -> wanted.add(model.place(id)));
            if (wanted.isEmpty()) {
                for (int i = 0; i < model.places.size(); i++) {
                    wanted.add(i);
                }
            }
            for (int place : wanted) {
                boolean needed = trips.stream().anyMatch(trip -> builder.teamPlace(trip) == place);
                // The crew that serves fewest places goes first by taking what nobody has yet.
                boolean taken = orders.stream().anyMatch(order -> order.contains(place));
                if (needed && !taken) {
                    orders.get(team).add(place);
                }
            }
        }
        List<Long> bias = new ArrayList<>(Collections.nCopies(trips.size(), 0L));
        double refuelKg = Math.min(model.machine.fuelUsableKg(), 230);
        return new Wishes(bias, orders, refuelKg, NO_EARLY_REST_S);
    }

    private Wishes change(Wishes wishes, SplittableRandom random) {
        List<Long> bias = new ArrayList<>(wishes.biasS());
        List<List<Integer>> orders = new ArrayList<>();
        wishes.teamOrder().forEach(order -> orders.add(new ArrayList<>(order)));
        double refuelKg = wishes.refuelToKg();
        long restWaitS = wishes.restWaitS();
        int move = random.nextInt(40);
        if (move < 2) {
            restWaitS = random.nextLong(300, NO_EARLY_REST_S + 1);
        } else if (move < 32 && !bias.isEmpty()) {
            int count = 1 + random.nextInt(3);
            for (int i = 0; i < count; i++) {
                bias.set(random.nextInt(bias.size()), random.nextLong(-BIAS_S, BIAS_S + 1));
            }
        } else if (move < 36) {
            double step = (random.nextInt(7) - 3) * REFUEL_STEP_KG;
            refuelKg = Math.max(60, Math.min(model.machine.fuelUsableKg(), refuelKg + step));
        } else if (move < 38) {
            swapPlaces(orders, random);
        } else {
            handOver(orders, random);
        }
        return new Wishes(bias, orders, refuelKg, restWaitS);
    }

    private static void swapPlaces(List<List<Integer>> orders, SplittableRandom random) {
        if (orders.isEmpty()) {
            return;
        }
        List<Integer> order = orders.get(random.nextInt(orders.size()));
        if (order.size() > 1) {
            int a = random.nextInt(order.size());
            int taken = order.remove(a);
            order.add(random.nextInt(order.size() + 1), taken);
        }
    }

    /** Gives one place to another crew that serves it. */
    private void handOver(List<List<Integer>> orders, SplittableRandom random) {
        if (orders.size() < 2) {
            return;
        }
        int from = random.nextInt(orders.size());
        int to = random.nextInt(orders.size());
        if (from == to || orders.get(from).isEmpty()) {
            return;
        }
        int place = orders.get(from).get(random.nextInt(orders.get(from).size()));
        if (people.serves(to, place)) {
            orders.get(from).remove(Integer.valueOf(place));
            orders.get(to).add(random.nextInt(orders.get(to).size() + 1), place);
        }
    }
}
