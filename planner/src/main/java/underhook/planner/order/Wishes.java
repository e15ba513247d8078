package underhook.planner.order;

import java.util.ArrayList;
import java.util.List;

/**
 * What a day is built from: preferences, never rules.
 *
 * @param biasS for each trip how much later than ready it may rank, s; may be negative
 * @param teamOrder for each team the sites it works at, in order
 * @param refuelToKg fill up to so much, kg
 * @param restWaitS a wait this long is made a whole break, s
 */
record Wishes(List<Long> biasS, List<List<Integer>> teamOrder, double refuelToKg, long restWaitS) {
    Wishes {
        biasS = List.copyOf(biasS);
        List<List<Integer>> orders = new ArrayList<>();
        for (List<Integer> order : teamOrder) {
            orders.add(List.copyOf(order));
        }
        teamOrder = List.copyOf(orders);
    }
}
