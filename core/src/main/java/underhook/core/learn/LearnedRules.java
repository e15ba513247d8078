package underhook.core.learn;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.job.LoadKind;
import underhook.core.job.Machine;
import underhook.core.job.Rules;

/**
 * The rules and the machine of a new day, with what earlier days taught.
 *
 * <p>Times over a place follow what was learned both ways. Masses and fuel flows are only ever raised: what
 * came lighter or burnt less is no licence. Of several groups of one kind the largest counts. Whole lift
 * times change nothing here, because each way is computed.
 *
 * @param findings one note for each figure that counts
 */
public record LearnedRules(Rules rules, Machine machine, List<Finding> findings) {
    public LearnedRules {
        findings = List.copyOf(findings);
    }

    /** Puts the figures in. */
    public static LearnedRules of(Rules rules, Machine machine, List<Figure> figures) {
        List<Finding> findings = new ArrayList<>();
        List<LoadKind> kinds =
                rules.kinds().stream().map(kind -> learned(kind, figures, findings)).toList();
        Machine burning =
                largest(figures, Measure.FUEL, Figure::group, machine.name())
                        .map(figure -> burning(machine, figure, findings))
                        .orElse(machine);
        return new LearnedRules(rules.withKinds(kinds), burning, findings);
    }

    private static LoadKind learned(LoadKind kind, List<Figure> figures, List<Finding> findings) {
        Optional<Figure> hover = largest(figures, Measure.HOVER_TIME, Figure::kind, kind.name());
        Optional<Figure> mass = largest(figures, Measure.MASS, Figure::kind, kind.name());
        double setDownS =
                hover.map(figure -> Math.ceil(kind.setDownS() * figure.believedRatio() - 1e-9))
                        .orElse(kind.setDownS());
        double heavierFactor =
                Math.max(kind.heavierFactor(), mass.map(Figure::believedRatio).orElse(1.0));
        hover.ifPresent(
                figure ->
                        findings.add(
                                note(
                                        figure,
                                        kind.name(),
                                        new Changed(
                                                "The set-down time",
                                                text("%.0f", kind.setDownS()),
                                                text("%.0f", setDownS),
                                                "s"))));
        mass.filter(figure -> figure.believedRatio() > kind.heavierFactor())
                .ifPresent(
                        figure ->
                                findings.add(
                                        note(
                                                figure,
                                                kind.name(),
                                                new Changed(
                                                        "The surcharge on listed masses",
                                                        text(
                                                                "%.1f",
                                                                100 * (kind.heavierFactor() - 1)),
                                                        text("%.1f", 100 * (heavierFactor - 1)),
                                                        "%"))));
        return kind.learned(setDownS, heavierFactor);
    }

    private static Machine burning(Machine machine, Figure figure, List<Finding> findings) {
        double factor = figure.believedRatio();
        if (factor <= 1) {
            return machine;
        }
        findings.add(
                note(
                        figure,
                        machine.name(),
                        new Changed(
                                "The fuel flow",
                                text("%.1f", 60 * machine.burnKgPerS()),
                                text("%.1f", 60 * machine.burnKgPerS() * factor),
                                "kg/min")));
        return machine.withBurn(machine.burnKgPerS() * factor, machine.hoverBurnKgPerS() * factor);
    }

    private static Optional<Figure> largest(
            List<Figure> figures, Measure quantity, Function<Figure, String> name, String wanted) {
        return figures.stream()
                .filter(figure -> figure.quantity() == quantity)
                .filter(figure -> name.apply(figure).equals(wanted))
                .max((a, b) -> Double.compare(a.believedRatio(), b.believedRatio()));
    }

    /** A figure before and after, as text, with its unit. */
    private record Changed(String what, String before, String now, String unit) {}

    private static Finding note(Figure figure, String subject, Changed changed) {
        return new Finding(
                FindingCode.LEARNED_FIGURE,
                Severity.NOTE,
                subject,
                changed.now(),
                changed.before(),
                changed.unit(),
                "learned",
                changed.what()
                        + " of "
                        + subject
                        + " is planned with "
                        + changed.now()
                        + " "
                        + changed.unit()
                        + " instead of "
                        + changed.before()
                        + " "
                        + changed.unit()
                        + ", learned from "
                        + figure.samples()
                        + (figure.samples() == 1 ? " flight." : " flights."));
    }

    private static String text(String format, double plainRatio) {
        return String.format(Locale.ROOT, format, plainRatio);
    }
}
