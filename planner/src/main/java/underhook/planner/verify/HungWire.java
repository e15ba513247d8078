package underhook.planner.verify;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import underhook.core.geo.Ground;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Hanging;
import underhook.core.job.Job;
import underhook.core.job.Place;
import underhook.core.job.WeatherHour;
import underhook.core.job.Wire;

/**
 * Everywhere that a wire can be, by the verifier's own parabolas: points every metre, each with the
 * highest it can reach and how far to the side.
 *
 * <p>Symbols: S level distance of two supports, C their chord, D vertical sag at mid-span, a level tension
 * over weight per length. D = S C / 8a, length = C + k D² with k = 8 S² / 3 C³.
 *
 * @source DERIVED parabola on an inclined chord
 */
final class HungWire {
    /** How much hotter and colder than stated a wire may be, K. @source PRACTICE */
    private static final double HOTTER_K = 60;

    private static final double COLDER_K = 40;

    /** Growth of aluminium for each kelvin. @source PRACTICE handbook value */
    private static final double GROWTH_COEFFICIENT = 23e-6;

    /** Solid steel. @source CPUC-GO95 appendix C (a) */
    private static final double STEEL_PA = 200e9;

    /** An earth wire has so much of the conductor's sag. @source PRACTICE */
    private static final double EARTH_WIRE_FRACTION = 0.8;

    /** Sag where nothing is stated, over the span. @source PRACTICE */
    private static final double UNSTATED_FRACTION = 0.06;

    /** Air at sea level, and drag of a round wire. @source PRACTICE */
    private static final double AIR_KG_PER_M3 = 1.225;

    private static final double DRAG_COEFFICIENT = 1.2;

    private static final double LEAST_WIND_M_PER_S = 20;

    /** A height that was never measured counts so much more. @source PRACTICE */
    private static final double UNMEASURED_FACTOR = 1.25;

    private final Ground ground;
    private final Wire wire;

    /** Sine of the angle that the day's strongest gust swings it to; 1 where that is not known. */
    private final double outFraction;

    private final List<PlanePoint> supports;
    private final List<Span> spans = new ArrayList<>();
    private final double widestM;
    private final double highestAmslM;

    /**
     * A point of a span.
     *
     * @param topAmslM highest the wire can be there, m AMSL
     * @param asideM how far to the side it can be there, m
     */
    record Spot(PlanePoint at, double topAmslM, double asideM) {}

    /** One span with its points, the same distance apart, from a to b. */
    record Span(PlanePoint a, PlanePoint b, List<Spot> spots) {
        Plane.Stretch stretch() {
            return new Plane.Stretch(a, b);
        }
    }

    HungWire(Job job, Ground ground, Wire wire) {
        this.ground = ground;
        this.wire = wire;
        this.outFraction = outFraction(job, wire.hanging());
        this.supports = wire.supports().stream().map(p -> ground.frame().toPlane(p)).toList();
        for (int i = 1; i < supports.size(); i++) {
            spans.add(span(i - 1));
        }
        this.widestM = spots().mapToDouble(Spot::asideM).max().orElse(0);
        this.highestAmslM =
                spots().mapToDouble(Spot::topAmslM)
                        .filter(Double::isFinite)
                        .max()
                        .orElse(Double.POSITIVE_INFINITY);
    }

    Wire wire() {
        return wire;
    }

    List<PlanePoint> supports() {
        return supports;
    }

    List<Span> spans() {
        return spans;
    }

    /** Whether height or sag are nobody's measure. */
    boolean isUnmeasured() {
        return wire.hanging().heightEstimated() || statedM().isEmpty();
    }

    /** Widest to the side anywhere, m. */
    double widestM() {
        return widestM;
    }

    /** Highest over known ground, m AMSL; endless where none is known. */
    double highestAmslM() {
        return highestAmslM;
    }

    private Stream<Spot> spots() {
        return spans.stream().flatMap(span -> span.spots().stream());
    }

    private boolean hasSupports() {
        return !wire.hanging().supportTopsM().isEmpty();
    }

    private double raisedM(double heightM) {
        return wire.hanging().heightEstimated() ? UNMEASURED_FACTOR * heightM : heightM;
    }

    private double topAmslM(int support) {
        double heightM =
                hasSupports() ? wire.hanging().supportTopsM().get(support) : wire.highestM();
        return overGroundAmslM(supports.get(support), heightM);
    }

    private boolean isKnown(PlanePoint at) {
        return ground.terrain().covers(at.eastM(), at.northM());
    }

    private double groundAmslM(PlanePoint at) {
        return ground.terrain().heightM(at.eastM(), at.northM());
    }

    /** Over unknown ground a wire counts as endlessly high: only distance aside clears it. */
    private double overGroundAmslM(PlanePoint at, double heightM) {
        return isKnown(at) ? groundAmslM(at) + raisedM(heightM) : Double.POSITIVE_INFINITY;
    }

    private Span span(int i) {
        PlanePoint a = supports.get(i);
        PlanePoint b = supports.get(i + 1);
        double topA = topAmslM(i);
        double topB = topAmslM(i + 1);
        Shape shape = shape(i);
        int pieces = Math.max(1, (int) Math.ceil(Plane.apartM(a, b)));
        List<Spot> spots = new ArrayList<>();
        double coldM = hasSupports() ? coldSagM(shape) : 0;
        double hotM = hasSupports() ? hotSagM(shape) : hotSagBetweenBendsM(shape);
        for (int k = 0; k <= pieces; k++) {
            double share = (double) k / pieces;
            PlanePoint at = Plane.between(a, b, share);
            double bow = 4 * share * (1 - share);
            double chord =
                    Double.isInfinite(topA + topB)
                            ? Double.POSITIVE_INFINITY
                            : topA + share * (topB - topA);
            double top =
                    hasSupports()
                            ? chord - coldM * bow
                            : Math.max(chord, overGroundAmslM(at, wire.highestM()));
            double sag = hasSupports() ? hotM * bow : hotM;
            double held = Math.max(top, chord);
            double height = isKnown(at) ? Math.max(0, held - groundAmslM(at)) : sag;
            double aside = wire.lateralM() + Math.min(sag, height) * outFraction;
            spots.add(new Spot(at, top, aside));
        }
        return new Span(a, b, spots);
    }

    /** Level distance and chord of two supports. */
    private record Shape(double levelM, double chordM) {
        double perSagFactor() {
            return 8 * levelM * levelM / (3 * chordM * chordM * chordM);
        }
    }

    private Shape shape(int i) {
        double levelM = Math.max(1, Plane.apartM(supports.get(i), supports.get(i + 1)));
        double rise = topAmslM(i + 1) - topAmslM(i);
        return new Shape(levelM, Math.hypot(levelM, Double.isFinite(rise) ? rise : 0));
    }

    private Shape longest() {
        Shape longest = shape(0);
        for (int i = 1; i + 1 < supports.size(); i++) {
            longest = shape(i).levelM() > longest.levelM() ? shape(i) : longest;
        }
        return longest;
    }

    /** Level tension over weight, m, as stated. */
    private OptionalDouble statedM() {
        Hanging how = wire.hanging();
        if (how.levelTensionN().isPresent() && how.weightNPerM().isPresent()) {
            return OptionalDouble.of(
                    how.levelTensionN().getAsDouble() / how.weightNPerM().getAsDouble());
        }
        return how.sagM().isPresent()
                ? OptionalDouble.of(
                        longest().levelM() * longest().chordM() / (8 * how.sagM().getAsDouble()))
                : OptionalDouble.empty();
    }

    private double statedSagM(Shape shape) {
        return shape.levelM() * shape.chordM() / (8 * statedM().getAsDouble());
    }

    private double hotSagM(Shape shape) {
        if (statedM().isEmpty()) {
            return UNSTATED_FRACTION * shape.levelM();
        }
        return grownM(statedSagM(shape), shape);
    }

    private static double grownM(double sagM, Shape shape) {
        double grown = GROWTH_COEFFICIENT * HOTTER_K * shape.chordM();
        return Math.sqrt(sagM * sagM + grown / shape.perSagFactor());
    }

    private double hotSagBetweenBendsM(Shape shape) {
        Hanging how = wire.hanging();
        boolean byTension = how.levelTensionN().isPresent() && how.weightNPerM().isPresent();
        if (byTension || how.sagM().isEmpty()) {
            return hotSagM(shape);
        }
        double sag = how.sagM().getAsDouble();
        double span = Math.min(longest().levelM(), 100 * sag);
        return grownM(sag, new Shape(span, span));
    }

    private double coldSagM(Shape shape) {
        if (statedM().isEmpty()) {
            return 0;
        }
        double stated = statedSagM(shape);
        double k = shape.perSagFactor();
        double slack = k * stated * stated - GROWTH_COEFFICIENT * COLDER_K * shape.chordM();
        Hanging how = wire.hanging();
        if (how.diameterM().isEmpty() || how.weightNPerM().isEmpty()) {
            return EARTH_WIRE_FRACTION * Math.sqrt(Math.max(0, slack) / k);
        }
        double diameter = how.diameterM().getAsDouble();
        double stretch =
                how.weightNPerM().getAsDouble()
                        * shape.chordM()
                        * shape.chordM()
                        * shape.chordM()
                        / (8 * STEEL_PA * Math.PI / 4 * diameter * diameter);
        double low = 0;
        double high = stated;
        for (int i = 0; i < 100; i++) {
            double sag = (low + high) / 2;
            if (k * sag * sag > slack + stretch * (1 / sag - 1 / stated)) {
                high = sag;
            } else {
                low = sag;
            }
        }
        return EARTH_WIRE_FRACTION * low;
    }

    private static double outFraction(Job job, Hanging how) {
        if (how.diameterM().isEmpty() || how.weightNPerM().isEmpty()) {
            return 1;
        }
        double exposed = 0;
        for (Place place : job.places()) {
            exposed = Math.max(exposed, place.exposureFactor());
        }
        double wind = LEAST_WIND_M_PER_S;
        for (WeatherHour hour : job.weather().hours()) {
            wind = Math.max(wind, exposed * hour.gustMPerS());
        }
        double push =
                0.5
                        * AIR_KG_PER_M3
                        * wind
                        * wind
                        * DRAG_COEFFICIENT
                        * how.diameterM().getAsDouble();
        double weight = how.weightNPerM().getAsDouble();
        return push / Math.hypot(push, weight);
    }
}
