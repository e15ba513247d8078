package underhook.adapter.job;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import underhook.adapter.job.Mentions.Family;
import underhook.adapter.job.text.Fields;
import underhook.adapter.job.text.JobDay;
import underhook.adapter.job.text.Quantity;
import underhook.adapter.job.text.Range;
import underhook.adapter.job.text.Source.Found;
import underhook.core.finding.FindingCode;
import underhook.core.job.ComfortRates;
import underhook.core.job.Handling;
import underhook.core.job.LoadKind;
import underhook.core.job.LoadShape;
import underhook.core.job.Rules;
import underhook.core.job.WindLimit;
import underhook.core.job.WireBufferRule;
import underhook.core.unit.Units;

/** Reads the operator's rules. */
final class RulesFile {
    private static final Range TIME = Range.of(0, 86_400, "between 0 and 24 hours");
    private static final Range SOME_TIME = Range.above(0, 86_400, "above 0, at most 24 hours");
    private static final Range DISTANCE = Range.of(0, 5000, "between 0 and 5000 m");
    private static final Range SOME_DISTANCE = Range.above(0, 5000, "above 0, at most 5000 m");
    private static final Range WIND = Range.of(0, 75, "between 0 and 75 m/s");
    private static final Range SOME_WIND = Range.above(0, 75, "above 0 and at most 75 m/s");
    private static final Range MASS = Range.of(0, 20_000, "between 0 and 20000 kg");
    private static final Range SLOPE = Range.of(0, Math.PI / 4, "between 0 and 45 degrees");
    private static final Range PART = Range.of(0, 0.99, "between 0 and 99 percent");

    private final Fields fields;
    private final JobDay day;
    private final Mentions mentions;

    private RulesFile(Fields fields, JobDay day, Mentions mentions) {
        this.fields = fields;
        this.day = day;
        this.mentions = mentions;
    }

    /** The rules; empty, with faults, when anything is wrong. */
    static Optional<Rules> read(Fields fields, JobDay day, Mentions mentions) {
        return new RulesFile(fields, day, mentions).read();
    }

    private Optional<Rules> read() {
        int before = fields.source().faults().count();
        Versions.check(fields);
        double constructionFraction =
                fields.quantity("construction_margin", Quantity.FRACTION, PART);
        double estimatedFraction =
                fields.quantity(
                        "estimated_mass",
                        Quantity.FRACTION,
                        Range.of(0, 3, "between 0 and 300 percent"));
        double clearanceM = fields.quantity("clearance", Quantity.LENGTH, DISTANCE);
        double rotorM = fields.quantity("rotor_clearance", Quantity.LENGTH, DISTANCE);
        double wireM = fields.quantity("wire_clearance", Quantity.LENGTH, DISTANCE);
        double stripM = fields.quantity("strip_half_width", Quantity.LENGTH, DISTANCE);
        double canopyM = fields.findQuantity("canopy_on_legs", Quantity.LENGTH, DISTANCE).orElse(0);
        double finalM = fields.quantity("final", Quantity.LENGTH, SOME_DISTANCE);
        double tailMPerS = fields.quantity("tailwind_limit", Quantity.SPEED, WIND);
        double crossMPerS = fields.quantity("crosswind_limit", Quantity.SPEED, WIND);
        double slopeRad = fields.quantity("landing_slope", Quantity.ANGLE, SLOPE);
        boolean hoverExit = fields.yesNo("hover_exit", false);
        double toleranceM = fields.quantity("elevation_tolerance", Quantity.LENGTH, DISTANCE);
        double trailM = fields.quantity("trail_near", Quantity.LENGTH, DISTANCE);
        double secondS = fields.quantity("second_release", Quantity.TIME, TIME);
        double returnS = fields.quantity("return_extra", Quantity.TIME, TIME);
        double boardingS = fields.quantity("boarding", Quantity.TIME, TIME);
        double lineChangeS = fields.quantity("line_change", Quantity.TIME, TIME);
        double refuelS = fields.quantity("refuel", Quantity.TIME, TIME);
        double flowKgPerS =
                fields.quantity(
                        "refuel",
                        Quantity.MASS_FLOW,
                        Range.above(0, 50, "above 0 and at most 3000 kg/min"));
        double handlerS = fields.quantity("refuel_handler_busy", Quantity.TIME, TIME);
        double contingencyS = fields.quantity("contingency", Quantity.TIME, TIME);
        double ballastKg = fields.findQuantity("ballast", Quantity.MASS, MASS).orElse(0);
        double leastMPerS = fields.quantity("least_speed", Quantity.SPEED, SOME_WIND);
        double combineKg = fields.quantity("combine_mass", Quantity.MASS, MASS);
        Instant dutyFrom = fields.time("duty_from", day);
        double dutyS = fields.quantity("duty", Quantity.TIME, SOME_TIME);
        double engineOnS = fields.quantity("engine_on", Quantity.TIME, SOME_TIME);
        double breakS = fields.quantity("break", Quantity.TIME, TIME);
        double engineDayS = fields.quantity("engine_on_day", Quantity.TIME, SOME_TIME);
        double dayEndS = fields.quantity("day_end_before_sunset", Quantity.TIME, TIME);
        Rules.ShutDown shutDown = readShutDown(engineOnS);
        Optional<Rules.Costs> costs = readCosts();
        List<LoadKind> kinds = readKinds();
        Rules.Margins margins = readMargins();
        Handling handling = HandlingFields.read(fields);
        fields.refuseUnknown();
        if (fields.source().faults().count() > before || costs.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(
                new Rules(
                        new Rules.Masses(
                                constructionFraction, 1 + estimatedFraction, ballastKg, combineKg),
                        new Rules.Distances(
                                clearanceM, rotorM, wireM, stripM, canopyM, toleranceM, trailM),
                        new Rules.Flying(finalM, tailMPerS, crossMPerS, leastMPerS),
                        new Rules.Landing(slopeRad, hoverExit),
                        new Rules.Times(secondS, returnS, boardingS, lineChangeS),
                        new Rules.Refuelling(refuelS, flowKgPerS, handlerS, contingencyS),
                        new Rules.Duty(
                                dutyFrom, dutyS, engineOnS, breakS, engineDayS, dayEndS, shutDown),
                        costs.get(),
                        margins,
                        kinds,
                        handling));
    }

    private Rules.ShutDown readShutDown(double engineOnS) {
        OptionalDouble marginS = fields.findQuantity("shut_down_margin", Quantity.TIME, TIME);
        if (marginS.isEmpty()) {
            return Rules.ShutDown.USUAL;
        }
        if (engineOnS > 0 && marginS.getAsDouble() >= engineOnS) {
            fields.fault(
                    FindingCode.FIELD_OUT_OF_RANGE,
                    fields.presentName("shut_down_margin", Quantity.TIME),
                    "leaves nothing of the time with the engine on",
                    Found.allowing("less than engine-on"));
        }
        return new Rules.ShutDown(marginS.getAsDouble(), true);
    }

    private Rules.Margins readMargins() {
        Rules.Margins usual = Rules.Margins.USUAL;
        return new Rules.Margins(
                fields.findQuantity("place_spread", Quantity.LENGTH, DISTANCE)
                        .orElse(usual.placeSpreadM()),
                fields.findQuantity("under_clearance", Quantity.LENGTH, DISTANCE)
                        .orElse(usual.underClearanceM()),
                fields.findQuantity(
                                "final_angle",
                                Quantity.ANGLE,
                                Range.of(
                                        Units.degToRad(1), Math.PI / 2, "between 1 and 90 degrees"))
                        .orElse(usual.finalAngleRad()),
                fields.findChoice("wire_buffers", WireBufferRule.class).orElse(usual.wireBuffers()),
                fields.findQuantity(
                                "bank",
                                Quantity.ANGLE,
                                Range.of(
                                        Units.degToRad(5), Math.PI / 3, "between 5 and 60 degrees"))
                        .orElse(usual.bankRad()));
    }

    private Optional<Rules.Costs> readCosts() {
        Optional<Fields> mapping = fields.findMapping("costs");
        if (mapping.isEmpty()) {
            if (fields.findNode("costs").isEmpty()) {
                fields.missing("costs");
            }
            return Optional.empty();
        }
        Fields costs = mapping.get();
        long flying = cents(costs, "flying_per_min");
        long standing = cents(costs, "standing_per_min");
        long people = cents(costs, "people_per_min");
        String currency = costs.currency("currency");
        int most = Rules.Costs.MOST_COUNTED_PERCENT;
        int counted =
                costs.text("flying_counts_percent", "").isEmpty()
                        ? 100
                        : costs.whole(
                                "flying_counts_percent", Range.of(1, most, "between 1 and 99999"));
        ComfortRates comforts = ComfortFields.read(costs);
        costs.refuseUnknown();
        return Optional.of(
                new Rules.Costs(
                        flying,
                        standing,
                        people,
                        currency,
                        Math.max(1, Math.min(most, counted)),
                        comforts));
    }

    private static long cents(Fields costs, String name) {
        return cents(costs, name, Range.of(0, 1e6, "between 0 and 1000000"));
    }

    /** Money to the cent, as whole cents. */
    static long cents(Fields costs, String name, Range range) {
        double cents = costs.number(name, range) * 100;
        if (Math.abs(cents - Math.rint(cents)) > 1e-6) {
            costs.fault(
                    FindingCode.FIELD_OUT_OF_RANGE,
                    name,
                    "is no whole number of cents",
                    new Found(costs.text(name, ""), "at most two decimals"));
        }
        return Math.round(cents);
    }

    private List<LoadKind> readKinds() {
        List<LoadKind> kinds = new ArrayList<>();
        List<Fields> rows = fields.mappings("kinds");
        if (rows.isEmpty()) {
            fields.missing("kinds");
        }
        rows.forEach(row -> readKind(row).ifPresent(kinds::add));
        return kinds;
    }

    private Optional<LoadKind> readKind(Fields row) {
        int before = row.source().faults().count();
        String name = row.id("kind");
        mentions.declare(Family.KIND, row, "kind", name);
        double speedMPerS = row.quantity("speed", Quantity.SPEED, SOME_WIND);
        double hookS = row.quantity("hook_up", Quantity.TIME, TIME);
        double setS = row.quantity("set_down", Quantity.TIME, TIME);
        boolean standsUp = row.yesNo("stands_up", false);
        boolean construction = row.yesNo("construction_margin", false);
        boolean shares = row.yesNo("shares_hook", false);
        boolean last = row.yesNo("last_at_place", false);
        double trailRad =
                row.quantity(
                        "trail_limit",
                        Quantity.ANGLE,
                        Range.above(0, 1.55, "above 0 and below 89 degrees"));
        double dragCoefficient =
                row.number("drag_coefficient", Range.above(0, 10, "above 0 and at most 10"));
        double busyS = row.findQuantity("busy_after", Quantity.TIME, TIME).orElse(0);
        double readyS = row.findQuantity("ready_after", Quantity.TIME, TIME).orElse(0);
        double meanMPerS = row.quantity("wind_mean", Quantity.SPEED, SOME_WIND);
        double gustMPerS = row.quantity("wind_gust", Quantity.SPEED, SOME_WIND);
        double spreadMPerS = row.quantity("wind_spread", Quantity.SPEED, SOME_WIND);
        LoadShape shape =
                row.findChoice("shape", LoadShape.class)
                        .orElse(standsUp ? LoadShape.ROUND : LoadShape.BOX);
        double heavier =
                row.findQuantity(
                                "heavier_than_listed",
                                Quantity.FRACTION,
                                Range.of(0, 1, "between 0 and 100 percent"))
                        .orElse(0);
        row.refuseUnknown();
        if (row.source().faults().count() > before) {
            return Optional.empty();
        }
        return Optional.of(
                new LoadKind(
                        name,
                        speedMPerS,
                        hookS,
                        setS,
                        standsUp,
                        construction,
                        shares,
                        last,
                        trailRad,
                        dragCoefficient,
                        busyS,
                        readyS,
                        new WindLimit(meanMPerS, gustMPerS, spreadMPerS),
                        shape,
                        1 + heavier));
    }
}
