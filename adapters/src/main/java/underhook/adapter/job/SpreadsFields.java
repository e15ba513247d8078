package underhook.adapter.job;

import java.util.List;
import underhook.adapter.job.text.Fields;
import underhook.adapter.job.text.Quantity;
import underhook.adapter.job.text.Range;
import underhook.adapter.job.text.Source.Found;
import underhook.core.finding.FindingCode;
import underhook.core.job.Handling;
import underhook.core.job.Rules;
import underhook.core.job.Spreads;
import underhook.core.learn.Figure;
import underhook.core.learn.Measure;

/** Reads how far a day's times may turn out other than planned. */
final class SpreadsFields {
    private static final Range RATIO = Range.of(0.1, 10, "between 10 and 1000 percent");
    private static final Range LATE = Range.of(0, 43_200, "between 0 and 12 hours");
    private static final Range EITHER_WAY = Range.of(-43_200, 43_200, "within 12 hours");
    private static final Range SHARE = Range.of(0, 1, "between 0 and 100 percent");
    private static final Range INSIDE = Range.of(0.5, 0.99, "between 50 and 99 percent");

    /** A wider spread of single flights says no more. */
    private static final double MOST_SPREAD = 2;

    private SpreadsFields() {}

    static Spreads read(Fields rules) {
        return rules.findMapping("spreads").map(SpreadsFields::of).orElse(Spreads.USUAL);
    }

    /** The same rules with the lift times of earlier days; hovers stand in the kinds already. */
    static Rules with(Rules rules, List<Figure> figures) {
        List<Spreads.Learned> flights =
                figures.stream()
                        .filter(figure -> figure.quantity() == Measure.LIFT_TIME)
                        .map(
                                figure ->
                                        new Spreads.Learned(
                                                figure.group(),
                                                figure.samples(),
                                                figure.believedRatio(),
                                                Math.min(MOST_SPREAD, figure.spreadRatio())))
                        .toList();
        Handling handling = rules.handling();
        return rules.withHandling(handling.withSpreads(handling.spreads().withLearned(flights)));
    }

    private static Spreads of(Fields fields) {
        Spreads usual = Spreads.USUAL;
        Spreads read =
                new Spreads(
                        ratios(fields, "cycle", usual.cycle()),
                        ratios(fields, "guying", usual.guying()),
                        ratios(fields, "ground", usual.ground()),
                        ratios(fields, "people", usual.people()),
                        times(fields, "crew_late", LATE, usual.crewLate()),
                        times(fields, "wind_later", EITHER_WAY, usual.windLater()),
                        fields.findQuantity("shared", Quantity.FRACTION, SHARE)
                                .orElse(usual.sharedFraction()),
                        fields.findQuantity("inside", Quantity.FRACTION, INSIDE)
                                .orElse(usual.insideFraction()),
                        usual.learned());
        fields.refuseUnknown();
        return read;
    }

    private static Spreads.Ratios ratios(Fields fields, String name, Spreads.Ratios usual) {
        return fields.findMapping(name).map(mapping -> ratios(fields, name, mapping)).orElse(usual);
    }

    private static Spreads.Ratios ratios(Fields fields, String name, Fields points) {
        double least = points.quantity("least", Quantity.FRACTION, RATIO);
        double most = points.quantity("most", Quantity.FRACTION, RATIO);
        double mode = points.quantity("usual", Quantity.FRACTION, RATIO);
        points.refuseUnknown();
        return rises(fields, name, least <= mode && mode <= most && least > 0)
                ? new Spreads.Ratios(least, mode, most)
                : Spreads.Ratios.NONE;
    }

    private static Spreads.Times times(
            Fields fields, String name, Range range, Spreads.Times usual) {
        return fields.findMapping(name)
                .map(
                        points -> {
                            double least = points.quantity("least", Quantity.TIME, range);
                            double mode = points.quantity("usual", Quantity.TIME, range);
                            double most = points.quantity("most", Quantity.TIME, range);
                            points.refuseUnknown();
                            return rises(fields, name, least <= mode && mode <= most)
                                    ? new Spreads.Times(least, mode, most)
                                    : Spreads.Times.NONE;
                        })
                .orElse(usual);
    }

    private static boolean rises(Fields fields, String name, boolean does) {
        if (!does) {
            fields.fault(
                    FindingCode.FIELD_OUT_OF_RANGE,
                    name,
                    "does not rise",
                    Found.allowing("least at most usual, usual at most most"));
        }
        return does;
    }
}
