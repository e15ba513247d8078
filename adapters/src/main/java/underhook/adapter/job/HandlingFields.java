package underhook.adapter.job;

import java.util.Optional;
import underhook.adapter.job.text.Fields;
import underhook.adapter.job.text.Quantity;
import underhook.adapter.job.text.Range;
import underhook.core.job.Handling;
import underhook.core.job.Rigging;
import underhook.core.job.Rules;

/** Reads what the rules say of flying loads and setting poles. */
final class HandlingFields {
    private static final double DEGREE_RAD = Math.PI / 180;
    private static final Range STEEP =
            Range.above(0, 89 * DEGREE_RAD, "above 0 and at most 89 degrees");
    private static final Range GENTLE =
            Range.above(0, 29 * DEGREE_RAD, "above 0 and at most 29 degrees");
    private static final Range PART = Range.of(0.05, 1, "between 5 and 100 percent");
    private static final Range INNER = Range.of(0.1, 0.9, "between 10 and 90 percent");

    private HandlingFields() {}

    static Handling read(Fields rules) {
        return new Handling(
                rules.findMapping("flying")
                        .map(HandlingFields::readFlying)
                        .orElse(Handling.Flying.USUAL),
                rules.findMapping("guying")
                        .map(HandlingFields::readGuying)
                        .orElse(Handling.Guying.USUAL),
                Rigging.NONE,
                SpreadsFields.read(rules),
                rules.findMapping("exposure")
                        .map(HandlingFields::readExposure)
                        .orElse(Handling.Exposure.USUAL));
    }

    private static Handling.Exposure readExposure(Fields fields) {
        Handling.Exposure usual = Handling.Exposure.USUAL;
        Handling.Exposure read =
                new Handling.Exposure(
                        price(fields, "guarded", usual.guardedS()),
                        price(fields, "open", usual.openS()),
                        price(fields, "wire", usual.wireS()),
                        price(fields, "water_per_100m", usual.waterS()),
                        price(fields, "quiet_per_100m", usual.quietS()),
                        new Handling.Exposure.Poor(
                                price(fields, "forest_per_100m", usual.poor().forestS()),
                                price(fields, "along_per_100m", usual.poor().alongS()),
                                price(fields, "steep_per_100m", usual.poor().steepS())));
        fields.refuseUnknown();
        return read;
    }

    private static double price(Fields fields, String name, double otherwiseS) {
        return fields.findQuantity(
                        name, Quantity.TIME, Range.of(0, 3600, "between 0 and 60 minutes"))
                .orElse(otherwiseS);
    }

    private static Handling.Flying readFlying(Fields fields) {
        Handling.Flying usual = Handling.Flying.USUAL;
        Handling.Flying read =
                new Handling.Flying(
                        fields.number(
                                "slowing_m_per_s2",
                                Range.of(0.1, 5, "between 0.1 and 5"),
                                usual.slowingMPerS2()),
                        angle(fields, "nose_up", 45, usual.noseUpRad()),
                        fields.findQuantity(
                                        "period_spread",
                                        Quantity.FRACTION,
                                        Range.of(0, 0.4, "between 0 and 40 percent"))
                                .orElse(usual.periodSpreadFraction()),
                        fields.findQuantity(
                                        "still",
                                        Quantity.LENGTH,
                                        Range.above(0, 20, "above 0 and at most 20 m"))
                                .orElse(usual.stillM()),
                        angle(fields, "swing", 80, usual.swingRad()),
                        fields.findQuantity("empty_trail_limit", Quantity.ANGLE, STEEP)
                                .orElse(usual.emptyTrailRad()),
                        fields.findQuantity(
                                        "tail_clear",
                                        Quantity.LENGTH,
                                        Range.of(0, 20, "between 0 and 20 m"))
                                .orElse(usual.tailClearM()));
        fields.refuseUnknown();
        return read;
    }

    private static double angle(Fields fields, String name, int mostDeg, double otherwiseRad) {
        Range range =
                Range.above(0, mostDeg * DEGREE_RAD, "above 0 and at most " + mostDeg + " degrees");
        return fields.findQuantity(name, Quantity.ANGLE, range).orElse(otherwiseRad);
    }

    private static Handling.Guying readGuying(Fields fields) {
        Handling.Guying usual = Handling.Guying.USUAL;
        Range force = Range.above(0, 1e6, "above 0 and at most 1000 kN");
        Handling.Guying read =
                new Handling.Guying(
                        fields.findQuantity("attach", Quantity.FRACTION, PART)
                                .orElse(usual.attachFraction()),
                        fields.findQuantity("wood_centre", Quantity.FRACTION, INNER)
                                .orElse(usual.woodCentreFraction()),
                        fields.findQuantity("other_centre", Quantity.FRACTION, INNER)
                                .orElse(usual.otherCentreFraction()),
                        fields.findQuantity("hand_pull", Quantity.FORCE, force)
                                .orElse(usual.handPullN()),
                        fields.findQuantity("anchor_holds", Quantity.FORCE, force)
                                .orElse(usual.anchorHoldN()),
                        fields.findQuantity("lean", Quantity.ANGLE, GENTLE).orElse(usual.leanRad()),
                        fields.findQuantity("side_pull", Quantity.ANGLE, GENTLE)
                                .orElse(usual.sidePullRad()));
        fields.refuseUnknown();
        return read;
    }

    /** The same rules with the gear of a list, when there is one. */
    static Rules with(Rules rules, Optional<Rigging> rigging) {
        return rigging.map(gear -> rules.withHandling(rules.handling().withRigging(gear)))
                .orElse(rules);
    }
}
