package underhook.planner.verify;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.job.Walk;

/** Shortest times on foot between all places. @source DERIVED Floyd and Warshall's all-pairs rule */
final class Walks {
    private final Map<PlaceId, Integer> index = new HashMap<>();
    private final double[][] leastS;

    Walks(List<Place> places, List<Walk> walks) {
        places.forEach(place -> index.put(place.id(), index.size()));
        leastS = new double[index.size()][index.size()];
        for (int i = 0; i < leastS.length; i++) {
            for (int j = 0; j < leastS.length; j++) {
                leastS[i][j] = i == j ? 0 : Double.POSITIVE_INFINITY;
            }
        }
        for (Walk walk : walks) {
            Integer a = index.get(walk.one());
            Integer b = index.get(walk.other());
            if (a != null && b != null) {
                leastS[a][b] = Math.min(leastS[a][b], walk.durationS());
                leastS[b][a] = Math.min(leastS[b][a], walk.durationS());
            }
        }
        for (int k = 0; k < leastS.length; k++) {
            for (int i = 0; i < leastS.length; i++) {
                for (int j = 0; j < leastS.length; j++) {
                    leastS[i][j] = Math.min(leastS[i][j], leastS[i][k] + leastS[k][j]);
                }
            }
        }
    }

    /** Least time on foot, s; infinite where there is no way. */
    double durationS(PlaceId from, PlaceId to) {
        Integer a = index.get(from);
        Integer b = index.get(to);
        return a == null || b == null ? Double.POSITIVE_INFINITY : leastS[a][b];
    }
}
