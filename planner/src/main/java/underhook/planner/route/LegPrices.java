package underhook.planner.route;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import underhook.core.geo.Ground;
import underhook.core.job.Job;

/** What is paid for passing over people, roads and poor ground. What was once looked at is kept. */
public final class LegPrices {
    /** A way that does not cross a road keeps off its line by this, m. @source PRACTICE */
    static final double KEEP_OFF_M = 1;

    /** In a proof only what touches a line crosses it, m. */
    static final double PROOF_OFF_M = Exposed.TOUCH_M / 2;

    private final Job job;
    private final Ground ground;
    private final List<WirePlan> wires;
    private final WayMaps maps;
    private final Memo<String, Exposures> exposures = Memo.of();

    LegPrices(Job job, Ground ground, List<WirePlan> wires, WayMaps maps) {
        this.job = job;
        this.ground = ground;
        this.wires = wires;
        this.maps = maps;
    }

    /** What has a price for a way that is flown. */
    Exposures flown(List<String> kinds) {
        return exposures(kinds, KEEP_OFF_M);
    }

    /** The same for what no way pays less than. */
    Exposures proven(List<String> kinds) {
        return exposures(kinds, PROOF_OFF_M);
    }

    /** What has a price under loads of these kinds; nothing under the empty line. */
    private Exposures exposures(List<String> kinds, double keepOffM) {
        return exposures.get(
                kinds.isEmpty() ? "" : maps.key(kinds) + "|" + keepOffM,
                unused ->
                        Exposures.of(job, ground, kinds, keepOffM)
                                .with(kinds.isEmpty() ? List.of() : wires, ground, job.rules()));
    }

    /** What a leg with loads of these kinds passes over at a price, s. */
    public double priceS(FlownLeg leg, List<String> kinds) {
        return flown(kinds).priceS(leg.points());
    }

    /** What a leg with loads of these kinds passes over at a price, each thing once with its price in s. */
    public Map<String, Double> pricesS(FlownLeg leg, List<String> kinds) {
        Map<String, Double> prices = new TreeMap<>();
        flown(kinds)
                .passed(leg.points())
                .forEach(one -> prices.merge(one.id(), one.priceS(), Double::sum));
        return prices;
    }

    /** How long a leg with loads of these kinds is over ground that has a price, m. */
    public double overM(FlownLeg leg, List<String> kinds) {
        return flown(kinds).passed(leg.points()).stream()
                .mapToDouble(Exposures.Passing::overM)
                .sum();
    }
}
