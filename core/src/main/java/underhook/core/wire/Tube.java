package underhook.core.wire;

import java.util.ArrayList;
import java.util.List;
import underhook.core.geo.Ground;
import underhook.core.geo.HeightField;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Wire;

/**
 * Everywhere that a wire can be on the day, as curtains of at most {@value #PIECE_M} m.
 *
 * <p>Upwards: the chord between the supports less the least sag. Where no heights of single supports are
 * stated, the points of the line may be mere bends: then no sag is credited, and the height stated for the
 * wire above the highest ground near is counted as well. Heights that are defaults are raised. Over
 * unknown ground the top is infinite. Sideways: how far the position may be off, and the most sag swung
 * out by the wind; a wire hangs no lower than the ground, so its sag is not more than its height.
 *
 * <p>Each curtain counts with the highest and widest of its piece, so nothing between is missed.
 */
public final class Tube {
    static final double PIECE_M = 10;

    /** What a height that nobody measured is multiplied with. @source PRACTICE */
    static final double ESTIMATED_HEIGHT_FACTOR = 1.25;

    /** Ground under a wire may be so much lower between the points looked at. @source PRACTICE */
    private static final double HOLLOW_M = 2;

    /** Cells longer than pieces by more than this are coarse. */
    private static final double COARSE_RATIO = 1.05;

    /** What sag may gain between the points it is taken at. */
    private static final double BETWEEN_M = 0.05;

    private final List<List<Curtain>> spans;
    private final double widestM;
    private final double highestAmslM;
    private final boolean assumed;

    private Tube(List<List<Curtain>> spans, boolean assumed) {
        this.spans = spans.stream().map(List::copyOf).toList();
        this.assumed = assumed;
        List<Curtain> all = spans.stream().flatMap(List::stream).toList();
        this.widestM = all.stream().mapToDouble(Curtain::halfWidthM).max().orElseThrow();
        this.highestAmslM =
                all.stream()
                        .mapToDouble(Curtain::topAmslM)
                        .filter(Double::isFinite)
                        .max()
                        .orElse(Double.POSITIVE_INFINITY);
    }

    /**
     * Of curtains already made.
     *
     * @param spans curtains of each span, in their order along the wire
     * @param assumed whether height or sag were never measured
     */
    public static Tube of(List<List<Curtain>> spans, boolean assumed) {
        return new Tube(spans, assumed);
    }

    /**
     * Everywhere that the wire can be.
     *
     * @param ground heights over the job's plane
     * @param gustMPerS strongest gust of the day where it is strongest, m/s
     */
    public static Tube of(Wire wire, Ground ground, double gustMPerS) {
        return new Making(wire, ground, gustMPerS).tube();
    }

    /** Curtains of each span, in their order along the wire. */
    public List<List<Curtain>> spans() {
        return spans;
    }

    /** Widest half-width anywhere, m. */
    public double widestM() {
        return widestM;
    }

    /** Highest that the wire can be over known ground, m AMSL; infinite where none of it is known. */
    public double highestAmslM() {
        return highestAmslM;
    }

    /** Whether its height or its sag is a default that nobody measured. */
    public boolean isAssumed() {
        return assumed;
    }

    /** One wire's tube being made. */
    private static final class Making {
        private final Wire wire;
        private final HeightField terrain;
        private final double asideFraction;
        private final double raisedFactor;
        private final boolean supportsKnown;
        private final List<PlanePoint> points;
        private final List<Double> topsAmslM = new ArrayList<>();
        private final Slackness slackness;

        Making(Wire wire, Ground ground, double gustMPerS) {
            this.wire = wire;
            this.terrain = ground.terrain();
            this.asideFraction = Swing.asideFraction(wire.hanging(), gustMPerS);
            this.raisedFactor = wire.hanging().heightEstimated() ? ESTIMATED_HEIGHT_FACTOR : 1;
            this.supportsKnown = !wire.hanging().supportTopsM().isEmpty();
            this.points = wire.supports().stream().map(ground.frame()::toPlane).toList();
            for (int i = 0; i < points.size(); i++) {
                double heightM =
                        supportsKnown ? wire.hanging().supportTopsM().get(i) : wire.highestM();
                topsAmslM.add(
                        highestAmslM(points.get(i), wire.lateralM()) + heightM * raisedFactor);
            }
            List<Slackness.Size> sizes = new ArrayList<>();
            for (int i = 0; i + 1 < points.size(); i++) {
                sizes.add(size(i));
            }
            this.slackness = Slackness.of(wire.hanging(), sizes);
        }

        Tube tube() {
            List<List<Curtain>> spans = new ArrayList<>();
            for (int i = 0; i + 1 < points.size(); i++) {
                spans.add(span(i));
            }
            boolean sagKnown = slackness.isStated();
            return new Tube(spans, wire.hanging().heightEstimated() || !sagKnown);
        }

        /** Two points at one place make a span of no length; it counts as a metre. */
        private Slackness.Size size(int i) {
            double diffM = topsAmslM.get(i + 1) - topsAmslM.get(i);
            return new Slackness.Size(
                    Math.max(1, points.get(i).distanceToM(points.get(i + 1))),
                    Double.isFinite(diffM) ? diffM : 0);
        }

        private List<Curtain> span(int i) {
            Slackness.Size size = size(i);
            int pieces = (int) Math.ceil(size.spanM() / PIECE_M);
            SagRange range = slackness.range(size);
            double flatM = supportsKnown ? 0 : slackness.mostBetweenBendsM(size);
            List<Curtain> curtains = new ArrayList<>();
            for (int k = 0; k < pieces; k++) {
                double from = (double) k / pieces;
                double to = (double) (k + 1) / pieces;
                PlanePoint a = between(i, from);
                PlanePoint b = between(i, to);
                double topAmslM =
                        Math.max(
                                chordAmslM(i, from) - creditM(range, from),
                                chordAmslM(i, to) - creditM(range, to));
                if (!supportsKnown) {
                    PlanePoint middle = between(i, (from + to) / 2);
                    double nearM = middle.distanceToM(a) + wire.lateralM();
                    topAmslM =
                            Math.max(
                                    topAmslM,
                                    highestAmslM(middle, nearM) + wire.highestM() * raisedFactor);
                }
                double sagM = supportsKnown ? mostM(range, from, to) : flatM;
                double chordAmslM = Math.max(chordAmslM(i, from), chordAmslM(i, to));
                double lowM = Math.max(topAmslM, chordAmslM) - lowestAmslM(a, b);
                double outM = Math.min(sagM, Math.max(0, lowM)) * asideFraction;
                curtains.add(new Curtain(a, b, topAmslM, wire.lateralM() + outM));
            }
            return curtains;
        }

        /** Between bends that may be no supports no sag is credited. */
        private double creditM(SagRange range, double alongFraction) {
            return supportsKnown ? range.leastM(alongFraction) : 0;
        }

        /**
         * Most sag on a piece: between points 5 m apart a curve rises above both by less than 5² / 8a, a
         * few centimetres on the slackest wire.
         */
        private static double mostM(SagRange range, double fromFraction, double toFraction) {
            double middleM = range.mostM((fromFraction + toFraction) / 2);
            double endsM = Math.max(range.mostM(fromFraction), range.mostM(toFraction));
            return Math.max(endsM, middleM) + BETWEEN_M;
        }

        private double chordAmslM(int i, double alongFraction) {
            double first = topsAmslM.get(i);
            double second = topsAmslM.get(i + 1);
            return Double.isInfinite(first) || Double.isInfinite(second)
                    ? Double.POSITIVE_INFINITY
                    : first + alongFraction * (second - first);
        }

        private PlanePoint between(int i, double alongFraction) {
            PlanePoint a = points.get(i);
            PlanePoint b = points.get(i + 1);
            return new PlanePoint(
                    a.eastM() + alongFraction * (b.eastM() - a.eastM()),
                    a.northM() + alongFraction * (b.northM() - a.northM()));
        }

        private double highestAmslM(PlanePoint at, double nearM) {
            return terrain.findHighestWithinM(at, nearM + leansM())
                    .orElse(Double.POSITIVE_INFINITY);
        }

        /** Cells no longer than a piece are met by its disc. */
        private double leansM() {
            return terrain.cellSizeM() > COARSE_RATIO * PIECE_M ? terrain.leansM() : 0;
        }

        /** Ground under a piece, on its low side; unknown ground lies endlessly deep. */
        private double lowestAmslM(PlanePoint a, PlanePoint b) {
            if (!terrain.covers(a.eastM(), a.northM()) || !terrain.covers(b.eastM(), b.northM())) {
                return Double.NEGATIVE_INFINITY;
            }
            return Math.min(
                            terrain.heightM(a.eastM(), a.northM()),
                            terrain.heightM(b.eastM(), b.northM()))
                    - HOLLOW_M;
        }
    }
}
