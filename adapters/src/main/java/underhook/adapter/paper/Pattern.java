package underhook.adapter.paper;

import java.io.IOException;
import java.util.List;
import java.util.stream.DoubleStream;
import underhook.adapter.paper.Sheet.Dot;
import underhook.core.job.Zone;

/** Hatches that differ without colour: lines clipped to the area. */
enum Pattern {
    NO_OVERFLIGHT(7, 45, 135),
    MIN_HEIGHT(8, 45, 45),
    NO_HOVER_BELOW(8, 90, 90),
    NO_FUEL(8, 135, 135),
    RELEASE(5, 0, 0);

    private final double between;
    private final double oneDeg;
    private final double otherDeg;

    /**
     * @param oneDeg direction of the lines, clockwise from up
     * @param otherDeg direction of the crossing lines; the same when there are none
     */
    Pattern(double between, double oneDeg, double otherDeg) {
        this.between = between;
        this.oneDeg = oneDeg;
        this.otherDeg = otherDeg;
    }

    static Pattern of(Zone.Rule rule) {
        return switch (rule) {
            case NO_OVERFLIGHT -> NO_OVERFLIGHT;
            case MIN_HEIGHT -> MIN_HEIGHT;
            case NO_HOVER_BELOW -> NO_HOVER_BELOW;
            case NO_FUEL -> NO_FUEL;
        };
    }

    void fill(Sheet sheet, List<Dot> ring) throws IOException {
        double left = ring.stream().mapToDouble(Dot::x).min().orElse(0);
        double right = ring.stream().mapToDouble(Dot::x).max().orElse(0);
        double top = ring.stream().mapToDouble(Dot::y).min().orElse(0);
        double bottom = ring.stream().mapToDouble(Dot::y).max().orElse(0);
        // A ring may reach far beyond the page; only what is seen is hatched.
        left = Math.max(left, 0);
        top = Math.max(top, 0);
        right = Math.min(right, sheet.width());
        bottom = Math.min(bottom, sheet.height());
        if (left >= right || top >= bottom) {
            return;
        }
        Dot middle = new Dot((left + right) / 2, (top + bottom) / 2);
        double reach = Math.hypot(right - left, bottom - top) / 2;
        sheet.clip(ring);
        sheet.stroke(0.45);
        for (double angleDeg : DoubleStream.of(oneDeg, otherDeg).distinct().toArray()) {
            double turn = Math.toRadians(angleDeg);
            double alongX = Math.sin(turn);
            double alongY = -Math.cos(turn);
            for (double off = -reach; off <= reach; off += between) {
                double x = middle.x() - alongY * off;
                double y = middle.y() + alongX * off;
                sheet.line(
                        x - alongX * reach,
                        y - alongY * reach,
                        x + alongX * reach,
                        y + alongY * reach);
            }
        }
        sheet.unclip();
    }
}
