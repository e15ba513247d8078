package underhook.adapter.planfile;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Collection;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.regex.Pattern;
import tools.jackson.core.StreamWriteFeature;
import tools.jackson.core.util.DefaultIndenter;
import tools.jackson.core.util.DefaultPrettyPrinter;
import tools.jackson.databind.ObjectWriter;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;
import underhook.app.port.Attribution;
import underhook.app.port.Caution;
import underhook.app.port.OutputWriter;
import underhook.app.port.Written;
import underhook.core.finding.Finding;
import underhook.core.geo.GeoPoint;
import underhook.core.job.Job;
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
import underhook.core.plan.VerifierReport;
import underhook.core.unit.Units;

/** Writes plan.json, version 1. The same plan gives the same bytes. */
public final class PlanJsonWriter implements OutputWriter {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;
    private static final ObjectWriter JSON =
            JsonMapper.builder()
                    .enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN)
                    .build()
                    .writer()
                    .with(
                            new DefaultPrettyPrinter()
                                    .withObjectIndenter(new DefaultIndenter("  ", "\n")));

    /** A number that JSON can hold and that reads back as the same text. */
    private static final Pattern PLAIN_NUMBER =
            Pattern.compile("-?(0|[1-9][0-9]{0,14})(\\.[0-9]{1,12})?");

    @Override
    public String fileName() {
        return PlanWords.FILE_NAME;
    }

    @Override
    public void write(Output output, Path file) throws IOException {
        ObjectNode root = new Page(output.readJob().job()).root(output.plan(), output.report());
        root.set("files", files(output.readJob().sums()));
        Files.writeString(file, JSON.writeValueAsString(root) + "\n", StandardCharsets.UTF_8);
    }

    /** What the plan was made of, for whoever lays it beside a folder later. */
    private static ArrayNode files(Map<String, String> sums) {
        ArrayNode files = NODES.arrayNode();
        new TreeMap<>(sums)
                .forEach((path, sum) -> files.addObject().put("path", path).put("sum", sum));
        return files;
    }

    /** One file's worth of nodes; all times carry the offset of the job's zone. */
    private record Page(Job job) {
        ObjectNode root(Plan plan, VerifierReport report) {
            ObjectNode root = NODES.objectNode();
            root.put("version", PlanWords.VERSION);
            root.put("caution", Caution.TEXT);
            root.put("planId", plan.id());
            root.put("job", plan.job());
            root.put("plannedAt", time(plan.plannedAt()));
            root.put("seed", plan.seed());
            root.put("effort", plan.effort());
            root.put("program", plan.program());
            root.set("summary", summary(plan));
            root.set("steps", array(plan.steps(), this::step));
            root.set("crews", array(plan.crews(), this::stay));
            root.set("places", array(plan.rooms(), this::room));
            root.set("poles", array(plan.poles(), Page::pole));
            root.set("kit", array(plan.kit(), Page::kit));
            root.set("odds", plan.odds().map(odds -> OddsNodes.of(odds, job.zone())).orElse(null));
            root.set("leftOut", array(plan.leftOut(), this::leftOut));
            root.set("findings", array(plan.findings(), this::finding));
            ObjectNode verifier = root.putObject("verifier");
            verifier.put("checks", report.checks());
            verifier.set("violations", array(report.violations(), this::finding));
            if (!report.over().isEmpty()) {
                verifier.set("over", array(report.over(), this::finding));
            }
            root.set("attribution", texts(Attribution.lines(job)));
            putText(root, "licence", Attribution.shareAlike(job).orElse(""));
            return root;
        }

        private ObjectNode summary(Plan plan) {
            Summary summary = plan.summary();
            ObjectNode node = NODES.objectNode();
            node.put("flightMinutes", minutes(summary.flightS()));
            node.put("finishAt", time(summary.finishAt()));
            node.put("rotations", summary.rotations());
            node.put("refuels", summary.refuels());
            node.put("lineChanges", summary.lineChanges());
            OptionalDouble boundS = summary.lowerBoundFlightS();
            putNumber(
                    node,
                    "lowerBoundFlightMinutes",
                    boundS.isPresent()
                            ? Optional.of(minutes(boundS.getAsDouble()))
                            : Optional.empty());
            putNumber(node, "flightGapPercent", Gaps.flightPercent(summary));
            putText(node, "finishBoundAt", summary.finishBoundAt().map(this::time).orElse(""));
            putNumber(node, "finishGapPercent", Gaps.finishPercent(plan));
            putText(node, "provenFor", summary.provenFor().orElse(""));
            putHeld(node, "peopleAsFlownBoundMinutes", summary.heldBounds().peopleS());
            putHeld(node, "hoursAsFlownBoundMinutes", summary.heldBounds().hoursS());
            node.put("cutShort", summary.cutShort());
            summary.price().ifPresent(price -> node.set("price", price(price)));
            node.set("front", array(summary.front(), this::trade));
            summary.anew().ifPresent(anew -> node.set("anew", anew(anew)));
            return node;
        }

        private static void putHeld(ObjectNode node, String name, OptionalDouble boundS) {
            boundS.ifPresent(value -> node.put(name, minutes(value)));
        }

        private ObjectNode anew(Anew anew) {
            ObjectNode node = NODES.objectNode();
            node.put("instead", anew.instead());
            node.put("fromAt", time(anew.fromAt()));
            node.put("moreFlightMinutes", minutes(anew.moreFlightS()));
            node.put("laterMinutes", minutes(anew.laterS()));
            anew.moreCents().ifPresent(cents -> node.put("moreCents", cents));
            node.set("rest", price(anew.rest()));
            if (!anew.readings().isEmpty()) {
                node.set("readings", array(anew.readings(), this::reading));
            }
            if (!anew.told().isEmpty()) {
                node.set("told", array(anew.told(), this::told));
            }
            return node;
        }

        private ObjectNode reading(Anew.Reading reading) {
            ObjectNode node = NODES.objectNode();
            node.put("at", time(reading.at()));
            node.put("fuelKg", fuel(reading.fuelKg()));
            return node;
        }

        private ObjectNode told(ToldPlace told) {
            ObjectNode node = NODES.objectNode();
            node.put("crew", told.crew().value());
            node.put("place", told.place().value());
            node.put("at", time(told.at()));
            return node;
        }

        private ObjectNode price(DayPrice price) {
            ObjectNode node = NODES.objectNode();
            node.put("flyingCents", price.flyingCents());
            node.put("standingCents", price.standingCents());
            node.put("peopleCents", price.peopleCents());
            node.put("comfortsCents", price.comfortsCents());
            node.put("totalCents", price.totalCents());
            node.put("currency", price.currency());
            node.set("comforts", array(price.comforts(), this::comfort));
            return node;
        }

        private ObjectNode comfort(RefusedComfort one) {
            ObjectNode node = NODES.objectNode();
            node.put("comfort", one.comfort().word());
            node.put("subject", one.subject());
            node.put("place", one.place().value());
            node.put("at", time(one.at()));
            node.put("count", one.count());
            node.put("unit", one.comfort().unit());
            node.put("cents", one.cents());
            return node;
        }

        private ObjectNode trade(Trade trade) {
            ObjectNode node = NODES.objectNode();
            node.put("flightMinutes", minutes(trade.flightS()));
            node.put("finishAt", time(trade.finishAt()));
            node.put("totalCents", trade.totalCents());
            node.put("comfortsCents", trade.comfortsCents());
            node.put("flyingRatePercent", trade.flyingRatePercent());
            node.put("chosen", trade.chosen());
            return node;
        }

        private ObjectNode step(Step step) {
            if (step.rotation().isPresent() != (step.kind() == StepKind.ROTATION)) {
                throw new IllegalArgumentException(
                        "a step of kind " + step.kind() + " and its rotation disagree.");
            }
            ObjectNode node = NODES.objectNode();
            node.put("kind", PlanWords.word(step.kind()));
            node.put("from", step.from().value());
            node.put("to", step.to().value());
            node.put("startAt", time(step.startAt()));
            node.put("endAt", time(step.endAt()));
            node.put("fuelStartKg", fuel(step.fuelStartKg()));
            node.put("fuelEndKg", fuel(step.fuelEndKg()));
            node.put("lineLengthM", Written.nearest(step.lineLengthM(), PlanWords.COARSE));
            node.put("engineRunning", step.engineRunning());
            step.crew().ifPresent(crew -> node.put("crew", crew.value()));
            step.rotation().ifPresent(rotation -> putRotation(node, rotation));
            if (step.rotation().isEmpty()) {
                node.set("legs", array(step.legs(), this::leg));
            }
            node.put("because", step.because());
            return node;
        }

        private void putRotation(ObjectNode node, Rotation rotation) {
            node.set("loads", texts(rotation.loads()));
            node.put("hookedAt", time(rotation.hookedAt()));
            node.put("fuelAtHookKg", fuel(rotation.fuelAtHookKg()));
            node.put("massOnHookKg", Written.up(rotation.massOnHookKg(), PlanWords.COARSE));
            node.put("hogeMassKg", Written.down(rotation.hogeMassKg(), PlanWords.COARSE));
            node.put("fuelMaxKg", fuel(rotation.fuelMaxKg()));
            node.put("ballastKg", Written.nearest(rotation.ballastKg(), PlanWords.COARSE));
            node.set("drops", array(rotation.drops(), this::drop));
            node.set("legs", array(rotation.legs(), this::leg));
            node.set("limits", array(rotation.limits(), this::limit));
        }

        private ObjectNode drop(Drop drop) {
            ObjectNode node = NODES.objectNode();
            node.put("load", drop.load().value());
            node.put("place", drop.place().value());
            node.put("releasedAt", time(drop.releasedAt()));
            node.put("approachFromTrueDeg", degrees(drop.approachFromTrueRad()));
            node.put("departureTrackTrueDeg", degrees(drop.departureTrackTrueRad()));
            node.put("headKt", knots(drop.headMPerS()));
            node.put("crossKt", knots(drop.crossMPerS()));
            node.set("reasons", texts(drop.reasons()));
            return node;
        }

        private ObjectNode leg(Leg leg) {
            ObjectNode node = NODES.objectNode();
            node.set("carrying", texts(leg.carrying()));
            node.put("from", leg.from().value());
            node.put("to", leg.to().value());
            ArrayNode path = node.putArray("path");
            for (PathPoint point : leg.path()) {
                path.add(
                        position(point.position())
                                .add(Written.up(point.hookAltitudeAmslM(), PlanWords.COARSE)));
            }
            node.put("distanceM", Written.nearest(leg.distanceM(), PlanWords.COARSE));
            node.put("minutes", minutes(leg.durationS()));
            node.put("boundMinutes", Gaps.boundMinutes(leg));
            putNumber(node, "gapPercent", Gaps.legPercent(leg));
            // A leg too short to have anything to keep clear of has no least clearance.
            putNumber(
                    node,
                    "leastClearanceM",
                    leg.leastClearanceM() == Double.POSITIVE_INFINITY
                            ? Optional.empty()
                            : Optional.of(Written.down(leg.leastClearanceM(), PlanWords.COARSE)));
            node.put("speedKt", knots(leg.speedMPerS()));
            node.set("crossings", array(leg.crossings(), this::crossing));
            node.set("wires", array(leg.wires(), this::pass));
            node.set("release", leg.release().map(this::look).orElse(null));
            node.set("slowing", leg.slowing().map(Page::slowing).orElse(null));
            node.set("exposure", exposure(leg.exposure()));
            return node;
        }

        private static ObjectNode exposure(Leg.Exposure exposure) {
            ObjectNode node = NODES.objectNode();
            node.put("priceSeconds", Written.up(exposure.priceS(), PlanWords.COARSE));
            node.put("boundSeconds", Written.down(exposure.boundS(), PlanWords.COARSE));
            node.put("overM", Written.up(exposure.overM(), PlanWords.COARSE));
            return node;
        }

        private static ObjectNode pole(PoleSetting pole) {
            ObjectNode node = NODES.objectNode();
            node.put("load", pole.load().value());
            node.put("place", pole.place().value());
            node.put("massKg", Written.up(pole.massKg(), PlanWords.COARSE));
            node.put("centreM", Written.nearest(pole.centreM(), PlanWords.FINE));
            node.put("attachM", Written.nearest(pole.attachM(), PlanWords.FINE));
            node.set("guys", array(pole.guys(), Page::guy));
            node.put("largestGapDeg", degrees(pole.largestGapRad()));
            node.put("gustKt", knots(pole.gustMPerS()));
            node.put("leanDeg", degrees(pole.leanRad()));
            node.put("handLeanDeg", degrees(pole.handLeanRad()));
            node.put("hoverSeconds", Written.up(pole.hoverS(), PlanWords.COARSE));
            node.put("hoverFuelKg", Written.up(pole.hoverFuelKg(), PlanWords.COARSE));
            node.put("spareKg", Written.down(pole.spareKg(), PlanWords.COARSE));
            node.put("readingKg", Written.up(pole.readingKg(), PlanWords.COARSE));
            node.put("sidePullN", Written.down(pole.sidePullN(), PlanWords.COARSE));
            node.put("topMPerS", Written.up(pole.topMPerS(), PlanWords.COARSE));
            return node;
        }

        private static ObjectNode guy(PoleSetting.GuyPull guy) {
            ObjectNode node = NODES.objectNode();
            node.put("azimuthTrueDeg", degrees(guy.azimuthTrueRad()));
            node.put("anchorDistanceM", Written.nearest(guy.anchorDistanceM(), PlanWords.FINE));
            node.put("anchorAboveButtM", Written.nearest(guy.anchorAboveButtM(), PlanWords.FINE));
            node.put("windN", Written.up(guy.windN(), PlanWords.COARSE));
            node.put("leanN", Written.up(guy.leanN(), PlanWords.COARSE));
            node.put("worstN", Written.up(guy.worstN(), PlanWords.COARSE));
            node.put("anchorUsed", Written.nearest(guy.anchorUsedRatio(), PlanWords.FINE));
            node.put("byHand", guy.byHand());
            return node;
        }

        private static ObjectNode kit(KitItem item) {
            ObjectNode node = NODES.objectNode();
            node.put("name", item.name());
            node.put("count", item.count());
            node.put("atOnce", item.atOnce());
            node.put("forDay", item.forDay());
            putText(node, "dueOn", item.dueOn().map(LocalDate::toString).orElse(""));
            node.set("uses", texts(item.uses()));
            return node;
        }

        private static ObjectNode slowing(Leg.Slowing slowing) {
            ObjectNode node = NODES.objectNode();
            node.put("beginM", Written.up(slowing.beginM(), PlanWords.COARSE));
            node.put("seconds", Written.up(slowing.lastsS(), PlanWords.COARSE));
            node.put("settleSeconds", Written.up(slowing.settleS(), PlanWords.COARSE));
            node.put("swingM", Written.up(slowing.swingM(), PlanWords.COARSE));
            return node;
        }

        private ObjectNode look(ReleaseLook look) {
            ObjectNode node = NODES.objectNode();
            node.put("longestClosedSeconds", Written.up(look.longestClosedS(), PlanWords.COARSE));
            node.put("longestUnnamedSeconds", Written.up(look.longestUnnamedS(), PlanWords.COARSE));
            node.put("farthestM", Written.up(look.farthestM(), PlanWords.COARSE));
            node.set("stretches", array(look.stretches(), this::stretch));
            return node;
        }

        private ObjectNode stretch(ReleaseLook.Stretch stretch) {
            ObjectNode node = NODES.objectNode();
            node.put("use", PlanWords.word(stretch.use()));
            node.put("fromM", Written.nearest(stretch.fromM(), PlanWords.COARSE));
            node.put("toM", Written.nearest(stretch.toM(), PlanWords.COARSE));
            node.put("seconds", Written.up(stretch.durationS(), PlanWords.COARSE));
            node.set("what", texts(stretch.what()));
            return node;
        }

        private ObjectNode pass(Leg.WirePass pass) {
            ObjectNode node = NODES.objectNode();
            node.put("wire", pass.wire());
            node.put("leastM", Written.down(pass.leastM(), PlanWords.COARSE));
            node.put("needM", Written.up(pass.needM(), PlanWords.COARSE));
            node.set("at", position(pass.at()));
            // Beside a wire there is no height above it.
            putNumber(
                    node,
                    "aboveM",
                    pass.aboveM().isPresent()
                            ? Optional.of(
                                    Written.down(pass.aboveM().getAsDouble(), PlanWords.COARSE))
                            : Optional.empty());
            node.put("assumed", pass.assumed());
            return node;
        }

        private ObjectNode crossing(Leg.Crossing crossing) {
            ObjectNode node = NODES.objectNode();
            node.put("feature", crossing.feature());
            node.set("at", position(crossing.at()));
            node.put("rule", crossing.rule());
            return node;
        }

        private ObjectNode limit(Limit limit) {
            ObjectNode node = NODES.objectNode();
            int at = limit.code().indexOf(PlanWords.AT);
            node.put("code", at < 0 ? limit.code() : limit.code().substring(0, at));
            node.put("place", at < 0 ? null : limit.code().substring(at + PlanWords.AT.length()));
            node.put("value", Written.nearest(limit.value(), PlanWords.FINE));
            node.put("limit", Written.nearest(limit.limit(), PlanWords.FINE));
            node.put("unit", limit.unit());
            node.put("marginPercent", Written.down(limit.marginPercent(), PlanWords.COARSE));
            node.put("source", limit.source());
            node.put("governing", limit.governing());
            return node;
        }

        private ObjectNode stay(CrewStay stay) {
            ObjectNode node = NODES.objectNode();
            node.put("crew", stay.crew().value());
            node.put("place", stay.place().value());
            node.put("fromAt", time(stay.fromAt()));
            node.put("toAt", time(stay.toAt()));
            node.put("doing", stay.doing());
            return node;
        }

        private ObjectNode room(PlaceRoom room) {
            ObjectNode node = NODES.objectNode();
            node.put("place", room.place().value());
            node.set("lines", array(room.lines(), this::lineRoom));
            putText(node, "advisedLine", room.advisedLine().orElse(""));
            node.put("reason", room.reason());
            return node;
        }

        private ObjectNode lineRoom(PlaceRoom.LineRoom room) {
            ObjectNode node = NODES.objectNode();
            node.put("line", room.line());
            node.put("lineLengthM", Written.nearest(room.lineLengthM(), PlanWords.FINE));
            node.put("standsM", Written.nearest(room.standsM(), PlanWords.FINE));
            for (PlaceRoom.Fit fit : PlaceRoom.Fit.values()) {
                ArrayNode sectors = node.putArray(PlanWords.sectorsField(fit));
                for (PlaceRoom.Sector sector : room.sectors()) {
                    if (sector.fit() == fit) {
                        sectors.addArray()
                                .add(bearing(sector.fromTrueRad()))
                                .add(degrees(sector.toTrueRad()));
                    }
                }
            }
            node.set("tightest", tightest(room.tightest()));
            node.put("settleSeconds", Written.up(room.cost().settleS(), PlanWords.COARSE));
            node.put("downwashKt", knots(room.cost().downwashMPerS()));
            node.put("reachM", Written.up(room.cost().reachM(), PlanWords.COARSE));
            return node;
        }

        private ObjectNode tightest(PlaceRoom.Tightest tightest) {
            ObjectNode node = NODES.objectNode();
            node.put("part", tightest.part());
            node.put("cause", tightest.cause());
            node.put("headingTrueDeg", degrees(tightest.headingTrueRad()));
            // Over unknown ground there is no distance.
            putNumber(
                    node,
                    "marginM",
                    tightest.marginM() == Double.NEGATIVE_INFINITY
                            ? Optional.empty()
                            : Optional.of(Written.down(tightest.marginM(), PlanWords.FINE)));
            node.put("neededM", Written.nearest(tightest.neededM(), PlanWords.FINE));
            node.put("unknownM", Written.up(tightest.unknownM(), PlanWords.FINE));
            return node;
        }

        private ObjectNode leftOut(LeftOut leftOut) {
            ObjectNode node = NODES.objectNode();
            node.put("load", leftOut.load().value());
            node.put("code", leftOut.code().name());
            node.put("message", leftOut.message());
            return node;
        }

        private ObjectNode finding(Finding finding) {
            ObjectNode node = NODES.objectNode();
            node.put("code", finding.code().name());
            node.put("severity", finding.severity().name());
            node.put("subject", finding.subject());
            putFound(node, "value", finding.value());
            putFound(node, "limit", finding.limit());
            putText(node, "unit", finding.unit());
            putText(node, "source", finding.source());
            node.put("message", finding.message());
            return node;
        }

        private String time(Instant instant) {
            return Written.time(instant, job.zone());
        }
    }

    private static <T> ArrayNode array(Collection<T> values, Function<T, ObjectNode> toNode) {
        ArrayNode array = NODES.arrayNode();
        values.forEach(value -> array.add(toNode.apply(value)));
        return array;
    }

    private static ArrayNode texts(Collection<?> values) {
        ArrayNode array = NODES.arrayNode();
        values.forEach(value -> array.add(value.toString()));
        return array;
    }

    private static ArrayNode position(GeoPoint point) {
        return NODES.arrayNode()
                .add(Written.nearest(point.lonDeg(), PlanWords.DEGREES))
                .add(Written.nearest(point.latDeg(), PlanWords.DEGREES));
    }

    private static BigDecimal minutes(double durationS) {
        return Written.nearest(Units.sToMinutes(durationS), PlanWords.FINE);
    }

    private static BigDecimal degrees(double angleRad) {
        return Written.nearest(Units.radToDeg(angleRad), PlanWords.FINE);
    }

    /** Below a whole turn also when rounded. */
    private static BigDecimal bearing(double angleRad) {
        BigDecimal degrees = degrees(angleRad);
        return degrees.compareTo(BigDecimal.valueOf(360)) >= 0 ? degrees(0) : degrees;
    }

    private static BigDecimal knots(double speedMPerS) {
        return Written.nearest(Units.mPerSToKt(speedMPerS), PlanWords.FINE);
    }

    /** All fuel is rounded the same way, so that what was not above a maximum is not written above it. */
    private static BigDecimal fuel(double massKg) {
        return Written.down(massKg, PlanWords.FINE);
    }

    private static void putNumber(ObjectNode node, String name, Optional<BigDecimal> value) {
        value.ifPresentOrElse(number -> node.put(name, number), () -> node.putNull(name));
    }

    /** Empty text is written as null. */
    private static void putText(ObjectNode node, String name, String text) {
        if (text.isEmpty()) {
            node.putNull(name);
        } else {
            node.put(name, text);
        }
    }

    /** A value that was found: a number where its text is one, to the digit. */
    private static void putFound(ObjectNode node, String name, String text) {
        if (PLAIN_NUMBER.matcher(text).matches()) {
            node.put(name, new BigDecimal(text));
        } else {
            putText(node, name, text);
        }
    }
}
