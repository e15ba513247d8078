package underhook.planner.verify;

import java.util.ArrayList;
import java.util.List;
import underhook.core.geo.PlanePoint;
import underhook.core.job.MapFeature;
import underhook.core.job.Place;
import underhook.core.job.Rules;

/**
 * What stands round a place, and how near the parts of a hover, or of a straight way from it, come to it: ground and trees point by
 * point on a grid of half a metre, what the map says stands up edge by edge, wires metre by metre. No
 * cell is left out for being far, and none is widened.
 */
final class HoverSpace {
    private static final double SAMPLE_M = 0.5;

    /** A cell of a metre that is not wholly beyond a distance may reach this much over it. */
    private static final double CELL_ACROSS_M = Math.sqrt(2);

    /** Height of what stands up where the map states none, m. @source PRACTICE */
    private static final double HOUSE_M = 12;

    private static final double MAST_M = 60;

    private final Day day;
    private final Rules rules;
    private final Place place;
    private final PlanePoint at;
    private final double eastRiseFactor;
    private final double northRiseFactor;
    private final List<Thing> things = new ArrayList<>();
    private final List<HungWire> wires;

    /** What is nearest, how near it comes, and how near it may. */
    record Near(String part, String what, double apartM, double needM) {
        double spareM() {
            return apartM - needM;
        }
    }

    /** What stands up on the map. */
    private record Thing(String id, Shape shape, Box box, double heightM) {}

    HoverSpace(Day day, Place place, List<HungWire> wires) {
        this.day = day;
        this.rules = day.job().rules();
        this.place = place;
        this.at = day.planeOf(place.position());
        this.wires = wires;
        double step = Math.max(1, day.ground().terrain().cellSizeM());
        double east = day.riseFactor(at, Math.PI / 2, step);
        double north = day.riseFactor(at, 0, step);
        // A load is not set down on ground steeper than 45 degrees, and none is carried on so.
        double less = Math.max(1, Math.hypot(east, north));
        this.eastRiseFactor = east / less;
        this.northRiseFactor = north / less;
        for (MapFeature feature : day.job().features()) {
            double height = feature.heightM().orElse(unstatedM(feature.kind()));
            if (height > 0) {
                Shape shape = day.shapeOf(feature);
                Box box = Box.round(shape.outline()).widened(shape.radiusM());
                things.add(new Thing(feature.id(), shape, box, height));
            }
        }
    }

    private static double unstatedM(MapFeature.Kind kind) {
        if (kind == MapFeature.Kind.HOUSE) {
            return HOUSE_M;
        }
        return kind == MapFeature.Kind.MAST ? MAST_M : 0;
    }

    PlanePoint at() {
        return at;
    }

    /** The tightest of a hover's parts. */
    Near tightest(List<HoverPart> parts) {
        Near tightest = new Near("", "", Double.POSITIVE_INFINITY, 0);
        for (HoverPart part : parts) {
            for (Near near : List.of(ground(part), thing(part), wire(part))) {
                tightest = near.spareM() < tightest.spareM() ? near : tightest;
            }
        }
        return tightest;
    }

    private double needM(HoverPart part) {
        return part.hangs()
                ? rules.margins().underClearanceM()
                : rules.distances().rotorClearanceM();
    }

    private Near ground(HoverPart part) {
        double need = needM(part);
        // On one grid round the place, as far as the part reaches, wherever it is on its way.
        Box near = Box.round(List.of(part.a(), part.b())).widened(part.halfWidthM() + need);
        double least = Double.POSITIVE_INFINITY;
        for (int i = first(near.westM() - at.eastM());
                i * SAMPLE_M <= near.eastM() - at.eastM();
                i++) {
            for (int j = first(near.southM() - at.northM());
                    j * SAMPLE_M <= near.northM() - at.northM();
                    j++) {
                PlanePoint p =
                        new PlanePoint(at.eastM() + i * SAMPLE_M, at.northM() + j * SAMPLE_M);
                double aside = part.asideM(p);
                if (aside < need && stands(part, p)) {
                    least = Math.min(least, part.apartM(aside, topAmslM(part, p)));
                }
            }
        }
        return new Near(part.name(), "ground or trees", least, need);
    }

    private static int first(double fromM) {
        return (int) Math.floor(fromM / SAMPLE_M);
    }

    /** Endless where the ground is not known. */
    private double topAmslM(HoverPart part, PlanePoint p) {
        return day.findGroundAmslM(p).orElse(Double.POSITIVE_INFINITY) + treesM(part, p);
    }

    /** Whether what is at a point counts: what a load is set down on does not, for it and its line. */
    private boolean stands(HoverPart part, PlanePoint p) {
        if (!part.hangs() || treesM(part, p) > 0) {
            return true;
        }
        double beyond = part.halfWidthM() + rules.margins().placeSpreadM() + CELL_ACROSS_M;
        double carriedOn =
                day.groundAmslM(at)
                        + eastRiseFactor * (p.eastM() - at.eastM())
                        + northRiseFactor * (p.northM() - at.northM());
        return Plane.apartM(p, at) > beyond
                && day.findGroundAmslM(p).orElse(Double.POSITIVE_INFINITY) - carriedOn
                        > rules.margins().underClearanceM() + Tolerance.CLEARANCE_M;
    }

    /** A clearing is one for what hangs; a machine drifts, and surveyed trees stand all round for it. */
    private double treesM(HoverPart part, PlanePoint p) {
        boolean surveyed = place.canopyM().isPresent();
        boolean cells = !surveyed && day.ground().canopy().isPresent();
        if (part.hangs() && !cells && Plane.apartM(p, at) <= place.clearingRadiusM()) {
            return 0;
        }
        return surveyed ? place.canopyM().getAsDouble() : day.canopyM(p);
    }

    private Near thing(HoverPart part) {
        Near nearest = new Near(part.name(), "", Double.POSITIVE_INFINITY, needM(part));
        Box near = Box.round(List.of(part.a(), part.b())).widened(part.halfWidthM() + needM(part));
        for (Thing thing : things) {
            if (thing.box().misses(near)) {
                continue;
            }
            double apart = apartM(part, thing);
            if (apart < nearest.apartM()) {
                nearest = new Near(part.name(), thing.id(), apart, needM(part));
            }
        }
        return nearest;
    }

    private double apartM(HoverPart part, Thing thing) {
        Shape shape = thing.shape();
        if (shape.covers(part.a())) {
            return part.apartM(0, topAmslM(part.a(), thing));
        }
        if (shape.outline().size() == 1) {
            PlanePoint mast = shape.outline().get(0);
            return part.apartM(part.asideM(mast), topAmslM(mast, thing));
        }
        double least = Double.POSITIVE_INFINITY;
        for (Plane.Stretch edge : shape.listEdges()) {
            double aside = part.asideM(edge);
            if (aside < needM(part)) {
                // The lower end: the wall is at least so high all along.
                double top = Math.min(topAmslM(edge.a(), thing), topAmslM(edge.b(), thing));
                least = Math.min(least, part.apartM(aside, top));
            }
        }
        return least;
    }

    private double topAmslM(PlanePoint p, Thing thing) {
        return day.findGroundAmslM(p).orElse(Double.POSITIVE_INFINITY) + thing.heightM();
    }

    private Near wire(HoverPart part) {
        Near nearest = new Near(part.name(), "", Double.POSITIVE_INFINITY, 0);
        for (HungWire wire : wires) {
            double need =
                    WireTable.needM(
                            wire.wire(),
                            rules.margins().wireBuffers(),
                            rules.distances().wireClearanceM(),
                            wire.highestAmslM());
            double within = part.reachM(at) + need + wire.widestM();
            for (HungWire.Span span : wire.spans()) {
                if (Plane.toSegmentM(at, span.a(), span.b()) > within) {
                    continue;
                }
                for (HungWire.Spot spot : span.spots()) {
                    double aside = part.asideM(spot.at()) - spot.asideM();
                    double apart = part.apartM(aside, spot.topAmslM());
                    if (apart - need < nearest.spareM()) {
                        nearest = new Near(part.name(), wire.wire().id(), apart, need);
                    }
                }
            }
        }
        return nearest;
    }
}
