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
    private final double[][] least;

    Walks(List<Place> places, List<Walk> walks) {
        places.forEach(place -> index.put(place.id(), index.size()));
        least = new double[index.size()][index.size()];
        for (int i = 0; i < least.length; i++) {
            for (int j = 0; j < least.length; j++) {
                least[i][j] = i == j ? 0 : Double.POSITIVE_INFINITY;
            }
        }
        for (Walk walk : walks) {
            Integer a = index.get(walk.one());
            Integer b = index.get(walk.other());
            if (a != null && b != null) {
                least[a][b] = Math.min(least[a][b], walk.durationS());
                least[b][a] = Math.min(least[b][a], walk.durationS());
            }
        }
        for (int k = 0; k < least.length; k++) {
            for (int i = 0; i < least.length; i++) {
                for (int j = 0; j < least.length; j++) {
                    least[i][j] = Math.min(least[i][j], least[i][k] + least[k][j]);
                }
            }
        }
    }

    /** Least time on foot, s; infinite where there is no way. */
    double durationS(PlaceId from, PlaceId to) {
        Integer a = index.get(from);
        Integer b = index.get(to);
        return a == null || b == null ? Double.POSITIVE_INFINITY : least[a][b];
    }
}
