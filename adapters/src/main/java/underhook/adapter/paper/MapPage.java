package underhook.adapter.paper;

import java.io.IOException;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import underhook.app.port.Attribution;
import underhook.app.port.OutputWriter.Output;
import underhook.app.port.Surroundings;
import underhook.core.geo.ContourStep;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.Ground;
import underhook.core.geo.PlanePoint;
import underhook.core.job.InputFile;
import underhook.core.job.Job;
import underhook.core.job.MapFeature;
import underhook.core.job.Place;
import underhook.core.job.ReleaseArea;
import underhook.core.job.Wire;
import underhook.core.job.Zone;
import underhook.core.plan.Leg;
import underhook.core.plan.PathPoint;
import underhook.core.plan.Plan;

/** The area of the day for black and white print: every mark differs in shape or pattern. */
final class MapPage {
    private static final double KEY_WIDTH = 158;

    /** Up to so many features each has its name. */
    private static final int SMALL_MAP = 100;

    /** Ground farther out than this from the local origin is not drawn, degrees of longitude. */
    private static final double REACH_DEG = 3;

    private final Job job;
    private final Plan plan;
    private final Ground ground;
    private final Words words;
    private final Surroundings near;

    MapPage(Output output, Words words) {
        this.job = output.readJob().job();
        this.ground = output.readJob().ground();
        this.plan = output.plan();
        this.words = words;
        this.near = Surroundings.of(output);
    }

    void draw(Book book) throws IOException {
        PDRectangle landscape =
                new PDRectangle(
                        /* width= */ PDRectangle.A4.getHeight(),
                        /* height= */ PDRectangle.A4.getWidth());
        Sheet sheet = book.newPage(landscape, "Map");
        List<String> attribution =
                sheet.fonts().wrap(Face.SMALL, attributions(), sheet.right() - sheet.left());
        double attributionTop = sheet.bottom() - attribution.size() * 9.5;
        Labels.Box frame =
                new Labels.Box(
                        sheet.left() + 14,
                        sheet.top() + 2,
                        sheet.right() - sheet.left() - KEY_WIDTH - 14,
                        attributionTop - sheet.top() - 20);
        MapView view = new MapView(frame, extent());
        MapInk ink = new MapInk(sheet, view);
        CrossedWays numbered = CrossedWays.of(isLarge() ? crossings(view) : List.of());
        Optional<ContourStep> contours = drawGround(ink, numbered);
        sheet.stroke(1);
        sheet.black();
        sheet.box(frame.x(), frame.y(), frame.width(), frame.height());
        MapTicks.draw(sheet, view, ground.frame());
        MapKey.draw(sheet, view, contours);
        double y = attributionTop;
        for (String line : attribution) {
            y += 9.5;
            sheet.text(sheet.left(), y, Face.SMALL, line);
        }
        numbered.list(book);
    }

    /** "guarded" of "guarded: nobody ...": the cards say the whole. */
    private static String shortly(String rule) {
        int colon = rule.indexOf(':');
        return colon < 0 ? rule : rule.substring(0, colon);
    }

    private List<CrossedWays.At> crossings(MapView view) {
        Map<String, String> kinds =
                near.features().stream()
                        .collect(
                                Collectors.toMap(
                                        MapFeature::id,
                                        one -> one.kind().name().toLowerCase(Locale.ROOT),
                                        (first, second) -> first));
        return legs().flatMap(leg -> leg.crossings().stream())
                .filter(one -> kinds.containsKey(one.feature()) && isInReach(one.at()))
                .map(
                        one ->
                                new CrossedWays.At(
                                        view.toPage(words.plane(one.at())),
                                        one.feature(),
                                        kinds.getOrDefault(one.feature(), "")
                                                + ", "
                                                + shortly(one.rule())))
                .filter(one -> view.shows(one.dot()))
                .toList();
    }

    /** Draws from the ground up; words come last so that nothing covers them. */
    private Optional<ContourStep> drawGround(MapInk ink, CrossedWays numbered) throws IOException {
        ink.begin();
        Optional<ContourStep> contours =
                ink.contours(
                        ground.terrain(),
                        words.isPounds() ? ContourStep.Unit.FT : ContourStep.Unit.M);
        for (ReleaseArea area : job.releaseAreas()) {
            ink.releaseArea(
                    points(area.outline()), area.id() + (area.agreed() ? "" : " not agreed"));
        }
        for (Zone zone : job.zones()) {
            boolean active = zone.isActiveOn(job.date());
            ink.zone(points(zone.ring()), zone, active);
        }
        Set<String> crossed = crossed();
        for (MapFeature feature : near.features()) {
            // The streets of a town that nothing passes over would bury what matters.
            if (!isLarge() || !isWay(feature) || crossed.contains(feature.id())) {
                ink.feature(points(feature.outline()), feature, isNamed(feature));
            }
        }
        for (Wire wire : near.wires()) {
            ink.wire(points(wire.supports()), wire);
        }
        drawLegs(ink);
        for (Place place : job.places()) {
            ink.place(words.plane(place.position()), place);
        }
        numbered.drawOn(ink);
        ink.writeLabels(isLarge());
        ink.end();
        return contours;
    }

    private static boolean isWay(MapFeature feature) {
        return switch (feature.kind()) {
            case ROAD, TRACK, TRAIL -> true;
            case RAILWAY, WATER, FOREST, HOUSE, PEOPLE, MAST, PROTECTED -> false;
        };
    }

    private boolean isLarge() {
        return near.features().size() > SMALL_MAP;
    }

    /** All of a small map; of a large one the masts: what is crossed has numbers there. */
    private boolean isNamed(MapFeature feature) {
        return !isLarge() || feature.kind() == MapFeature.Kind.MAST;
    }

    private Set<String> crossed() {
        return legs().flatMap(leg -> leg.crossings().stream())
                .map(Leg.Crossing::feature)
                .collect(Collectors.toSet());
    }

    private Stream<Leg> legs() {
        return plan.steps().stream()
                .flatMap(
                        step ->
                                Stream.concat(
                                        step.rotation().stream()
                                                .flatMap(rotation -> rotation.legs().stream()),
                                        step.legs().stream()));
    }

    private void drawLegs(MapInk ink) throws IOException {
        Set<String> drawn = new LinkedHashSet<>();
        for (boolean loaded : new boolean[] {true, false}) {
            for (Leg leg : legs().filter(one -> one.carrying().isEmpty() != loaded).toList()) {
                boolean news = drawn.add(leg.from() + "\u0000" + leg.to());
                boolean backAlongLoaded = drawn.contains(leg.to() + "\u0000" + leg.from());
                if (news && (loaded || !backAlongLoaded)) {
                    ink.leg(points(leg.path().stream().map(PathPoint::position).toList()), loaded);
                    for (List<PlanePoint> part : LetGo.closed(leg, this::points)) {
                        ink.closed(part);
                    }
                }
            }
        }
    }

    private List<PlanePoint> extent() {
        Stream<GeoPoint> positions =
                Stream.of(
                                job.places().stream().map(Place::position),
                                legs().flatMap(leg -> leg.path().stream()).map(PathPoint::position),
                                job.releaseAreas().stream()
                                        .flatMap(area -> area.outline().stream()))
                        .flatMap(stream -> stream);
        return points(positions.toList());
    }

    private List<PlanePoint> points(List<GeoPoint> points) {
        return points.stream().filter(this::isInReach).map(words::plane).toList();
    }

    private boolean isInReach(GeoPoint point) {
        GeoPoint origin = ground.frame().origin();
        return Math.abs(Math.IEEEremainder(point.lonDeg() - origin.lonDeg(), 360)) < REACH_DEG
                && Math.abs(point.latDeg() - origin.latDeg()) < REACH_DEG;
    }

    private String attributions() {
        Set<String> all = new LinkedHashSet<>();
        for (InputFile input : job.inputs()) {
            String text =
                    (input.attribution()
                                    + (input.licence().isBlank() ? "" : ", ")
                                    + input.licence())
                            .strip();
            if (!text.isEmpty() && !text.equals(",")) {
                all.add(
                        String.format(Locale.ROOT, "%s: %s", input.role(), text)
                                .replace(": , ", ": "));
            }
        }
        String sources =
                all.isEmpty()
                        ? "No input states an attribution."
                        : "Sources: " + String.join("; ", all) + ".";
        return Stream.of(
                        Stream.of("Numbers: what is crossed there stands on the next page.")
                                .filter(unused -> isLarge() && !crossed().isEmpty()),
                        Stream.of(sources),
                        Attribution.shareAlike(job).stream(),
                        near.note().stream())
                .flatMap(text -> text)
                .collect(Collectors.joining(" "));
    }
}
