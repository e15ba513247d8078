package underhook.adapter.planfile;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.TreeMap;
import tools.jackson.core.JacksonException;
import tools.jackson.core.exc.UnexpectedEndOfInputException;
import underhook.app.port.Attribution;
import underhook.app.port.Caution;
import underhook.app.port.PlanReader;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Outcome;
import underhook.core.finding.Severity;
import underhook.core.geo.GeoPoint;
import underhook.core.job.CrewId;
import underhook.core.job.Job;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;
import underhook.core.plan.Anew;
import underhook.core.plan.CrewStay;
import underhook.core.plan.DayPrice;
import underhook.core.plan.Drop;
import underhook.core.plan.KitItem;
import underhook.core.plan.LeftOut;
import underhook.core.plan.Leg;
import underhook.core.plan.Limit;
import underhook.core.plan.PathPoint;
import underhook.core.plan.PlaceRoom;
import underhook.core.plan.Plan;
import underhook.core.plan.PoleSetting;
import underhook.core.plan.RefusedComfort;
import underhook.core.plan.ReleaseLook;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;
import underhook.core.plan.Summary;
import underhook.core.plan.ToldPlace;
import underhook.core.plan.Trade;
import underhook.core.unit.Units;

/**
 * Reads plan.json strictly: unknown, missing, doubled and unreadable fields are all listed at once.
 *
 * <p>The plan that comes back is judged by nobody here. Gaps and totals that do not follow from the numbers
 * beside them come back as SUMMARY_WRONG findings with the plan, because the plan itself does not hold them.
 */
public final class PlanJsonReader implements PlanReader {
    private static final long USUAL_EFFORT = 10;

    /** A day of searching, more than which nobody may ask for. */
    private static final long MOST_EFFORT = 86_400;

    private static final long MOST_BYTES = 256L * 1024 * 1024;

    /** A gap is written with three decimals, rounded up; recomputing may differ in the last. */
    private static final double GAP_TOLERANCE_PERCENT = 0.0015;

    @Override
    public Outcome<Plan> read(Path file) {
        return read(file, Optional.empty());
    }

    @Override
    public Outcome<Plan> read(Path file, Job of) {
        return read(file, Optional.of(of));
    }

    private static Outcome<Plan> read(Path file, Optional<Job> of) {
        String name = String.valueOf(file.getFileName());
        Faults faults = new Faults(name);
        Located root;
        if (!Files.isRegularFile(file)) {
            return refused(name, FindingCode.PLAN_UNREADABLE, "is not there, or is no file.");
        }
        try {
            if (Files.size(file) > MOST_BYTES) {
                return refused(name, FindingCode.TOO_LARGE, "is larger than 256 MiB.");
            }
            String text = Files.readString(file, StandardCharsets.UTF_8);
            root = Located.parse(text.startsWith("\uFEFF") ? text.substring(1) : text);
        } catch (CharacterCodingException notUtf8) {
            return refused(
                    name,
                    FindingCode.PLAN_UNREADABLE,
                    "is no UTF-8 text; it was changed since it was written.");
        } catch (IOException unreadable) {
            return refused(
                    name,
                    FindingCode.PLAN_UNREADABLE,
                    "cannot be read: " + unreadable.getMessage() + ".");
        } catch (JacksonException notJson) {
            int line = notJson.getLocation() == null ? 0 : notJson.getLocation().getLineNr();
            return refused(
                    name + ":" + line,
                    FindingCode.PLAN_UNREADABLE,
                    notJson instanceof UnexpectedEndOfInputException
                            ? "ends in the middle. Perhaps it was cut off when it was copied."
                            : "is no JSON from here on, or has a field twice.");
        }
        ObjectFields fields = new ObjectFields("", root, faults);
        if (root.kind() == Located.Kind.OBJECT) {
            long version = fields.whole("version");
            if (faults.list().isEmpty() && version != PlanWords.VERSION) {
                return refused(
                        name,
                        FindingCode.VERSION_UNKNOWN,
                        "has version " + version + "; this program reads version 1.");
            }
        }
        if (root.kind() != Located.Kind.OBJECT) {
            return Outcome.refused(faults.list());
        }
        List<Finding> doubts = new ArrayList<>();
        Reading reading = new Reading(name, doubts);
        Plan plan = reading.plan(fields);
        of.ifPresent(job -> reading.compareSources(fields, job));
        fields.objectsIfThere("files", one -> one.text("path") + one.text("sum"));
        fields.refuseOthers();
        return faults.list().isEmpty()
                ? Outcome.done(plan, doubts)
                : Outcome.refused(faults.list());
    }

    @Override
    public Map<String, String> findSums(Path file) {
        Map<String, String> sums = new TreeMap<>();
        try {
            String text = Files.readString(file, StandardCharsets.UTF_8);
            Located root = Located.parse(text.startsWith("\uFEFF") ? text.substring(1) : text);
            new ObjectFields("", root, new Faults(String.valueOf(file.getFileName())))
                    .objectsIfThere("files", one -> sums.put(one.text("path"), one.text("sum")));
        } catch (IOException | JacksonException unreadable) {
            return Map.of();
        }
        return sums;
    }

    private static Outcome<Plan> refused(String where, FindingCode code, String what) {
        return Outcome.refused(Finding.of(code, Severity.STOP, where, where, where + " " + what));
    }

    private record Reading(String file, List<Finding> doubts) {
        Plan plan(ObjectFields root) {
            root.allow("caution", "attribution", "licence", "verifier");
            List<Double> gapsPercent = new ArrayList<>();
            Plan plan =
                    new Plan(
                            root.text("planId"),
                            root.text("job"),
                            new Plan.Made(
                                    root.time("plannedAt"),
                                    root.whole(
                                            "seed"), // Plans written before lack it; the usual was
                                    // searched.
                                    root.isThere("effort")
                                            ? root.whole("effort", 1, MOST_EFFORT, "whole seconds")
                                            : USUAL_EFFORT,
                                    root.text("program")),
                            root.object("summary", s -> summary(s, gapsPercent)),
                            root.objects("steps", this::step),
                            root.objects("crews", this::stay),
                            root.objects("leftOut", this::leftOut),
                            root.objects("findings", this::finding),
                            root.objects("places", this::room),
                            root.objectsIfThere("poles", Reading::pole),
                            root.objectsIfThere("kit", Reading::kit),
                            root.objectIfThere("odds", OddsReading::of));
            compare(
                    "summary.flightGapPercent",
                    gapsPercent.get(0),
                    Gaps.flightPercent(plan.summary()).map(Number::doubleValue).orElse(Double.NaN));
            compare(
                    "summary.finishGapPercent",
                    gapsPercent.get(1),
                    Gaps.finishPercent(plan).map(Number::doubleValue).orElse(Double.NaN));
            return plan;
        }

        /** Whose data a plan holds is said in it, with the caution. */
        void compareSources(ObjectFields root, Job job) {
            List<String> named =
                    root.isThere("attribution") ? root.texts("attribution") : List.of();
            for (String line : Attribution.lines(job)) {
                if (!named.contains(line)) {
                    doubts.add(unsaid("attribution", line));
                }
            }
            Attribution.shareAlike(job)
                    .filter(licence -> !root.textIfThere("licence").equals(Optional.of(licence)))
                    .ifPresent(licence -> doubts.add(unsaid("licence", licence)));
            if (!root.textIfThere("caution").orElse("").contains(Caution.TEXT)) {
                doubts.add(unsaid("caution", Caution.TEXT));
            }
        }

        private Finding unsaid(String field, String text) {
            return Finding.of(
                    FindingCode.STATED_WRONG,
                    Severity.STOP,
                    field,
                    file,
                    "The plan does not say, under " + field + ": " + text);
        }

        /** Both may be NaN, for none. */
        private void compare(String field, double statedPercent, double foundPercent) {
            boolean bothNone = Double.isNaN(statedPercent) && Double.isNaN(foundPercent);
            if (bothNone || Math.abs(statedPercent - foundPercent) <= GAP_TOLERANCE_PERCENT) {
                return;
            }
            doubts.add(
                    doubt(
                            field,
                            Double.isNaN(statedPercent) ? "" : Double.toString(statedPercent),
                            Double.isNaN(foundPercent) ? "" : Double.toString(foundPercent),
                            "percent"));
        }

        private Finding doubt(String field, String stated, String found, String unit) {
            return new Finding(
                    FindingCode.SUMMARY_WRONG,
                    Severity.STOP,
                    field,
                    stated,
                    found,
                    unit,
                    file,
                    field + " does not follow from the numbers beside it.");
        }

        private Summary summary(ObjectFields s, List<Double> gapsPercent) {
            double flightS = Units.minutesToS(s.number("flightMinutes"));
            OptionalDouble boundMinutes = s.numberOrNull("lowerBoundFlightMinutes");
            gapsPercent.add(s.numberOrNull("flightGapPercent").orElse(Double.NaN));
            gapsPercent.add(s.numberOrNull("finishGapPercent").orElse(Double.NaN));
            return new Summary(
                    flightS,
                    s.time("finishAt"),
                    new Summary.Counts(
                            s.count("rotations"), s.count("refuels"), s.count("lineChanges")),
                    new Summary.Bounds(
                            boundMinutes.isPresent()
                                    ? OptionalDouble.of(
                                            Units.minutesToS(boundMinutes.getAsDouble()))
                                    : OptionalDouble.empty(),
                            s.timeOrNull("finishBoundAt"),
                            s.textOrNull("provenFor"),
                            new Summary.Held(
                                    boundS(s, "peopleAsFlownBoundMinutes"),
                                    boundS(s, "hoursAsFlownBoundMinutes"))),
                    s.flag("cutShort"),
                    s.objectIfThere("price", this::price),
                    s.objectsIfThere("front", Reading::trade),
                    s.objectIfThere("anew", this::anew));
        }

        private static OptionalDouble boundS(ObjectFields s, String name) {
            return s.isThere(name)
                    ? OptionalDouble.of(Units.minutesToS(s.number(name)))
                    : OptionalDouble.empty();
        }

        private Anew anew(ObjectFields a) {
            return new Anew(
                    a.text("instead"),
                    a.time("fromAt"),
                    a.object("rest", this::price),
                    Units.minutesToS(a.number("moreFlightMinutes")),
                    Units.minutesToS(a.number("laterMinutes")),
                    a.isThere("moreCents")
                            ? OptionalLong.of(a.signedCents("moreCents"))
                            : OptionalLong.empty(),
                    a.objectsIfThere(
                            "readings",
                            read -> new Anew.Reading(read.time("at"), read.number("fuelKg"))),
                    a.objectsIfThere(
                            "told",
                            told ->
                                    new ToldPlace(
                                            new CrewId(told.text("crew")),
                                            new PlaceId(told.text("place")),
                                            told.time("at"))));
        }

        /** The plan does not hold the total: it is found again from its parts. */
        private DayPrice price(ObjectFields p) {
            long statedCents = p.cents("totalCents");
            DayPrice price =
                    new DayPrice(
                            p.cents("flyingCents"),
                            p.cents("standingCents"),
                            p.cents("peopleCents"),
                            p.objectsIfThere("comforts", Reading::comfort),
                            p.text("currency"));
            // Plans written before comforts had a price lack them.
            long comfortsCents = p.isThere("comfortsCents") ? p.cents("comfortsCents") : 0;
            if (comfortsCents != price.comfortsCents()) {
                doubts.add(
                        doubt(
                                "summary.price.comfortsCents",
                                Long.toString(comfortsCents),
                                Long.toString(price.comfortsCents()),
                                "cents"));
            }
            if (statedCents != price.totalCents()) {
                doubts.add(
                        doubt(
                                "summary.price.totalCents",
                                Long.toString(statedCents),
                                Long.toString(price.totalCents()),
                                "cents"));
            }
            return price;
        }

        private static RefusedComfort comfort(ObjectFields c) {
            Optional<RefusedComfort.Comfort> comfort = PlanWords.findComfort(c.text("comfort"));
            if (comfort.isEmpty()) {
                c.refuse("comfort", "sun-ahead, sun-beside, tailwind, crosswind or walk");
            }
            RefusedComfort.Comfort known = comfort.orElse(RefusedComfort.Comfort.WALK);
            if (!c.text("unit").equals(known.unit())) {
                c.refuse("unit", known.unit());
            }
            return new RefusedComfort(
                    known,
                    c.text("subject"),
                    c.id("place", PlaceId::new),
                    c.time("at"),
                    c.cents("count"),
                    c.cents("cents"));
        }

        private static Trade trade(ObjectFields t) {
            return new Trade(
                    Units.minutesToS(t.number("flightMinutes")),
                    t.time("finishAt"),
                    t.cents("totalCents"),
                    t.isThere("comfortsCents") ? t.cents("comfortsCents") : 0,
                    t.count("flyingRatePercent"),
                    t.flag("chosen"));
        }

        private Step step(ObjectFields s) {
            Optional<StepKind> known = PlanWords.findKind(s.text("kind"));
            if (known.isEmpty()) {
                s.refuse("kind", "rotation, position, crewMove, refuel, lineChange, break or wait");
            }
            StepKind kind = known.orElse(StepKind.WAIT);
            boolean rotation = kind == StepKind.ROTATION;
            if (known.isEmpty()) {
                // Which fields belong here is not known, so none is called unknown.
                s.allow("crew", "loads", "hookedAt", "fuelAtHookKg", "massOnHookKg", "hogeMassKg");
                s.allow("fuelMaxKg", "ballastKg", "drops", "legs", "limits");
            }
            return new Step(
                    kind,
                    s.id("from", PlaceId::new),
                    s.id("to", PlaceId::new),
                    s.time("startAt"),
                    s.time("endAt"),
                    s.number("fuelStartKg"),
                    s.number("fuelEndKg"),
                    s.number("lineLengthM"),
                    s.flag("engineRunning"),
                    rotation ? Optional.of(rotation(s)) : Optional.empty(),
                    kind == StepKind.CREW_MOVE
                            ? Optional.of(s.id("crew", CrewId::new))
                            : Optional.empty(),
                    rotation || known.isEmpty() ? List.of() : s.objects("legs", this::leg),
                    s.text("because"));
        }

        private Rotation rotation(ObjectFields s) {
            return new Rotation(
                    s.ids("loads", LoadId::new),
                    s.time("hookedAt"),
                    s.number("fuelAtHookKg"),
                    s.number("massOnHookKg"),
                    s.number("hogeMassKg"),
                    s.number("fuelMaxKg"),
                    s.number("ballastKg"),
                    s.objects("drops", this::drop),
                    s.objects("legs", this::leg),
                    s.objects("limits", this::limit));
        }

        private Drop drop(ObjectFields d) {
            return new Drop(
                    d.id("load", LoadId::new),
                    d.id("place", PlaceId::new),
                    d.time("releasedAt"),
                    Units.degToRad(d.bearingDeg("approachFromTrueDeg")),
                    Units.degToRad(d.bearingDeg("departureTrackTrueDeg")),
                    Units.ktToMPerS(d.number("headKt")),
                    Units.ktToMPerS(d.number("crossKt")),
                    d.texts("reasons"));
        }

        private Leg leg(ObjectFields l) {
            double gapPercent = l.numberOrNull("gapPercent").orElse(Double.NaN);
            Leg leg = legWithoutGap(l);
            compare(
                    leg.from() + "-" + leg.to() + " gapPercent",
                    gapPercent,
                    Gaps.legPercent(leg).map(Number::doubleValue).orElse(Double.NaN));
            return leg;
        }

        private Leg legWithoutGap(ObjectFields l) {
            return new Leg(
                    l.ids("carrying", LoadId::new),
                    l.id("from", PlaceId::new),
                    l.id("to", PlaceId::new),
                    l.each("path", (where, value) -> pathPoint(l.position(where, value, 3))),
                    l.number("distanceM"),
                    Units.minutesToS(l.number("minutes")),
                    Units.minutesToS(notNegative(l, "boundMinutes")),
                    l.numberOrNull("leastClearanceM").orElse(Double.POSITIVE_INFINITY),
                    Units.ktToMPerS(l.number("speedKt")),
                    l.objects("crossings", this::crossing),
                    l.objects("wires", Reading::pass),
                    new Leg.Looks(
                            l.objectOrNull(
                                    "release",
                                    Reading::look), // Plans written before this was told lack it.
                            l.objectIfThere("slowing", Reading::slowing),
                            l.objectIfThere("exposure", Reading::exposure)
                                    .orElse(Leg.Exposure.NONE)));
        }

        private static Leg.Exposure exposure(ObjectFields e) {
            return new Leg.Exposure(
                    notNegative(e, "priceSeconds"),
                    notNegative(e, "boundSeconds"),
                    // Plans written before this was told lack it.
                    e.isThere("overM") ? notNegative(e, "overM") : 0);
        }

        private static PoleSetting pole(ObjectFields p) {
            List<PoleSetting.GuyPull> guys = p.objects("guys", Reading::guy);
            if (guys.isEmpty()) {
                p.refuse("guys", "one guy or more");
                guys = List.of(new PoleSetting.GuyPull(0, 1, 0, 0, 0, 0, 0, false));
            }
            return new PoleSetting(
                    p.id("load", LoadId::new),
                    p.id("place", PlaceId::new),
                    positive(p, "massKg"),
                    positive(p, "centreM"),
                    positive(p, "attachM"),
                    guys,
                    Units.degToRad(p.number("largestGapDeg")),
                    Units.ktToMPerS(p.number("gustKt")),
                    Units.degToRad(p.number("leanDeg")),
                    Units.degToRad(p.number("handLeanDeg")),
                    notNegative(p, "hoverSeconds"),
                    p.number("hoverFuelKg"),
                    p.number("spareKg"),
                    p.number("readingKg"),
                    p.number("sidePullN"),
                    p.number("topMPerS"));
        }

        private static PoleSetting.GuyPull guy(ObjectFields g) {
            return new PoleSetting.GuyPull(
                    Units.degToRad(g.bearingDeg("azimuthTrueDeg")),
                    positive(g, "anchorDistanceM"),
                    g.number("anchorAboveButtM"),
                    notNegative(g, "windN"),
                    notNegative(g, "leanN"),
                    notNegative(g, "worstN"),
                    notNegative(g, "anchorUsed"),
                    g.flag("byHand"));
        }

        private static KitItem kit(ObjectFields k) {
            int atOnce = k.count("atOnce");
            int forDay = k.count("forDay");
            if (forDay < atOnce) {
                k.refuse("forDay", "a count not below atOnce");
            }
            return new KitItem(
                    k.text("name"),
                    k.count("count"),
                    atOnce,
                    Math.max(atOnce, forDay),
                    k.dateOrNull("dueOn"),
                    k.texts("uses"));
        }

        private static double positive(ObjectFields fields, String name) {
            double value = fields.number(name);
            if (!(value > 0)) {
                fields.refuse(name, "a number above 0");
            }
            return value > 0 ? value : 1;
        }

        private static Leg.Slowing slowing(ObjectFields s) {
            return new Leg.Slowing(
                    notNegative(s, "beginM"),
                    notNegative(s, "seconds"),
                    notNegative(s, "settleSeconds"),
                    notNegative(s, "swingM"));
        }

        private static ReleaseLook look(ObjectFields r) {
            return new ReleaseLook(
                    r.objects("stretches", Reading::stretch),
                    notNegative(r, "longestClosedSeconds"),
                    notNegative(r, "longestUnnamedSeconds"),
                    notNegative(r, "farthestM"));
        }

        private static ReleaseLook.Stretch stretch(ObjectFields s) {
            Optional<ReleaseLook.Use> use = PlanWords.findUse(s.text("use"));
            if (use.isEmpty()) {
                s.refuse("use", "closed, guarded, open or named");
            }
            double fromM = notNegative(s, "fromM");
            double toM = notNegative(s, "toM");
            if (toM < fromM) {
                s.refuse("toM", "a number not below fromM");
            }
            return new ReleaseLook.Stretch(
                    use.orElse(ReleaseLook.Use.CLOSED),
                    fromM,
                    Math.max(fromM, toM),
                    notNegative(s, "seconds"),
                    s.texts("what"));
        }

        private static Leg.WirePass pass(ObjectFields w) {
            return new Leg.WirePass(
                    w.text("wire"),
                    notNegative(w, "leastM"),
                    notNegative(w, "needM"),
                    w.point("at"),
                    w.numberOrNull("aboveM"),
                    w.flag("assumed"));
        }

        private static double notNegative(ObjectFields fields, String name) {
            double value = fields.number(name);
            if (value < 0) {
                fields.refuse(name, "a number from 0");
            }
            return Math.max(0, value);
        }

        private static PathPoint pathPoint(List<Double> position) {
            return new PathPoint(new GeoPoint(position.get(1), position.get(0)), position.get(2));
        }

        private Leg.Crossing crossing(ObjectFields c) {
            return new Leg.Crossing(c.text("feature"), c.point("at"), c.text("rule"));
        }

        private Limit limit(ObjectFields l) {
            return new Limit(
                    l.text("code")
                            + l.textIfThere("place").map(place -> PlanWords.AT + place).orElse(""),
                    l.number("value"),
                    l.number("limit"),
                    l.text("unit"),
                    l.number("marginPercent"),
                    l.text("source"),
                    l.flag("governing"));
        }

        private CrewStay stay(ObjectFields c) {
            return new CrewStay(
                    c.id("crew", CrewId::new),
                    c.id("place", PlaceId::new),
                    c.time("fromAt"),
                    c.time("toAt"),
                    c.text("doing"));
        }

        private PlaceRoom room(ObjectFields r) {
            return new PlaceRoom(
                    r.id("place", PlaceId::new),
                    r.objects("lines", this::lineRoom),
                    r.textOrNull("advisedLine"),
                    r.text("reason"));
        }

        private PlaceRoom.LineRoom lineRoom(ObjectFields r) {
            List<PlaceRoom.Sector> sectors = new ArrayList<>();
            for (PlaceRoom.Fit fit : PlaceRoom.Fit.values()) {
                r.sectors(PlanWords.sectorsField(fit))
                        .forEach(
                                deg ->
                                        sectors.add(
                                                new PlaceRoom.Sector(
                                                        fit,
                                                        Units.degToRad(deg.get(0)),
                                                        Units.degToRad(deg.get(1)))));
            }
            sectors.sort(Comparator.comparingDouble(PlaceRoom.Sector::fromTrueRad));
            return new PlaceRoom.LineRoom(
                    r.text("line"),
                    r.amount("lineLengthM"),
                    r.amount("standsM"),
                    sectors,
                    r.object("tightest", this::tightest),
                    new PlaceRoom.Cost(
                            r.amount("settleSeconds"),
                            Units.ktToMPerS(r.amount("downwashKt")),
                            r.amount("reachM")));
        }

        private PlaceRoom.Tightest tightest(ObjectFields t) {
            return new PlaceRoom.Tightest(
                    t.text("part"),
                    t.text("cause"),
                    Units.degToRad(t.bearingDeg("headingTrueDeg")),
                    t.numberOrNull("marginM").orElse(Double.NEGATIVE_INFINITY),
                    t.amount("neededM"),
                    t.amount("unknownM"));
        }

        private LeftOut leftOut(ObjectFields l) {
            return new LeftOut(
                    l.id("load", LoadId::new),
                    l.word("code", FindingCode.class),
                    l.text("message"));
        }

        private Finding finding(ObjectFields f) {
            return new Finding(
                    f.word("code", FindingCode.class),
                    f.word("severity", Severity.class),
                    f.text("subject"),
                    f.found("value"),
                    f.found("limit"),
                    f.textOrNull("unit").orElse(""),
                    f.textOrNull("source").orElse(""),
                    f.text("message"));
        }
    }
}
