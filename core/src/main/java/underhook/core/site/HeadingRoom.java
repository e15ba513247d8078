package underhook.core.site;

import java.util.List;

/**
 * Room on one heading with one line.
 *
 * @param headingGridRad nose, rad from grid north
 * @param margins the tightest of each part that has anything near it
 */
public record HeadingRoom(double headingGridRad, List<Margin> margins) {
    public HeadingRoom {
        margins = List.copyOf(margins);
        if (margins.isEmpty()) {
            throw new IllegalArgumentException("margins must hold at least the tail's.");
        }
    }

    /** What decides: the worst fit, and of these the least to spare. */
    public Margin tightest() {
        Margin worst = margins.get(0);
        for (Margin margin : margins) {
            worst = margin.isTighterThan(worst) ? margin : worst;
        }
        return worst;
    }

    public Fit fit() {
        return tightest().fit();
    }
}
