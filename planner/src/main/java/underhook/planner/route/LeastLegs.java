package underhook.planner.route;

import java.util.List;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Job;

/** What no legal leg goes below. */
public final class LeastLegs {
    /** So often when the least is proven. */
    private static final int PROOF_PARTS = 40;

    private final LegRules rules;
    private final WayMaps maps;
    private final LegPrices prices;
    private final LegBound bound;

    LeastLegs(Job job, HeightProfile profile, WayMaps maps, LegPrices prices) {
        this.rules = new LegRules(job);
        this.maps = maps;
        this.prices = prices;
        this.bound =
                new LegBound(
                        profile,
                        new LegBound.Rates(
                                job.machine().climbMPerS(), job.machine().descentMPerS()));
    }

    /**
     * What no legal leg between two ends goes below, whatever its directions there, s.
     *
     * @param wind as it counts for the leg's time
     */
    public double leastS(LegFinder.Request request, WayMap.Wind wind) {
        return bound.leastS(request, rules.need(request), air(request, wind));
    }

    /** The same for its directions. */
    public double leastAsDirectedS(LegFinder.Request request, WayMap.Wind wind) {
        return isBoundByFinals(request)
                ? bound.leastS(
                        request, rules.need(request), air(request, wind), rules.turning(request))
                : leastS(request, wind);
    }

    /** What no legal leg for its directions goes below in time and prices together, s. */
    public double leastCostAsDirectedS(LegFinder.Request request, WayMap.Wind wind) {
        LegBound.Air air =
                new LegBound.Air(wind, maps.ofBound(request.kinds()), priced(request, wind));
        return isBoundByFinals(request)
                ? bound.leastS(request, rules.need(request), air, rules.turning(request))
                : bound.leastS(request, rules.need(request), air);
    }

    private boolean isBoundByFinals(LegFinder.Request request) {
        return rules.hasFinals(request) && rules.isApart(request);
    }

    private LegBound.Priced priced(LegFinder.Request request, WayMap.Wind wind) {
        Exposures things = prices.proven(request.kinds());
        WayMap map = maps.ofBound(request.kinds());
        CheapestWay cheapest =
                new CheapestWay(
                        things,
                        (key, closed) ->
                                maps.closing(
                                        maps.key(request.kinds()) + "bound" + key, map, closed),
                        PlanWays.parts(map, PROOF_PARTS));
        return new LegBound.Priced() {
            @Override
            public double wayS(PlanePoint from, PlanePoint to, double leastS) {
                CheapestWay.Found found = cheapest.find(from, to, wind, leastS);
                return found.ways().isEmpty()
                        ? from.distanceToM(to) / wind.airspeedMPerS()
                        : found.boundS();
            }

            @Override
            public double priceS(PlanePoint a, PlanePoint b) {
                return things.priceS(List.of(a, b));
            }
        };
    }

    private LegBound.Air air(LegFinder.Request request, WayMap.Wind wind) {
        return new LegBound.Air(wind, maps.ofBound(request.kinds()));
    }
}
