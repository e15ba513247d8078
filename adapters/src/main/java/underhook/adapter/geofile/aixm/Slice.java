package underhook.adapter.geofile.aixm;

import java.util.Comparator;
import java.util.List;

/**
 * What is said of an obstacle for a time.
 *
 * @param isWhole whether it says everything (BASELINE, SNAPSHOT), not only what changes
 * @param begin when it begins, as written; empty when nobody says
 * @param reachM how far it reaches around its position (guys, a group), m
 */
record Slice(
        boolean isWhole,
        String begin,
        double sequence,
        double correction,
        String name,
        String type,
        double reachM,
        List<Part> parts) {
    private static final Comparator<Slice> IN_TIME =
            Comparator.comparing(Slice::begin)
                    .thenComparing(Slice::sequence)
                    .thenComparing(Slice::correction);

    Slice {
        parts = List.copyOf(parts);
    }

    /**
     * The slices that count: the latest that says everything, and changes that begin later. Changes stand
     * beside what they change, for a thing too many costs less than one too few.
     */
    static List<Slice> counting(List<Slice> all) {
        List<Slice> placed =
                all.stream()
                        .filter(
                                slice ->
                                        slice.parts.stream().anyMatch(p -> !p.outlines().isEmpty()))
                        .sorted(IN_TIME)
                        .toList();
        int from = 0;
        for (int i = 0; i < placed.size(); i++) {
            from = placed.get(i).isWhole ? i : from;
        }
        return placed.subList(from, placed.size());
    }

    /** Type of a part, or of the whole where the part has none. */
    String typeOf(Part part) {
        return part.type().isEmpty() ? type : part.type();
    }
}
