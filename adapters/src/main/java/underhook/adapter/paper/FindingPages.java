package underhook.adapter.paper;

import java.io.IOException;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import underhook.app.port.OutputWriter.Output;
import underhook.core.finding.Finding;
import underhook.core.finding.Severity;
import underhook.core.plan.LeftOut;

/** Everything that was found, what can hurt most first. */
final class FindingPages {
    private final Output output;

    FindingPages(Output output) {
        this.output = output;
    }

    void draw(Book book) throws IOException {
        Flow flow = new Flow(book, PDRectangle.A4, "Findings");
        List<LeftOut> leftOut = output.plan().leftOut();
        flow.heading(Words.count(leftOut.size(), "load") + " left out");
        if (!leftOut.isEmpty()) {
            flow.table(
                    List.of(
                            Flow.Column.strong("load", 70),
                            Flow.Column.of("reason", 130),
                            Flow.Column.of("in words", 327)));
            for (LeftOut one : leftOut) {
                flow.row(
                        List.of(one.load().value(), Words.words(one.code().name()), one.message()));
            }
        }
        List<Finding> findings = all();
        flow.space(8);
        flow.heading(Words.count(findings.size(), "finding"));
        if (findings.isEmpty()) {
            return;
        }
        flow.table(
                List.of(
                        Flow.Column.strong("", 78),
                        Flow.Column.strong("about", 62),
                        Flow.Column.of("what", 186),
                        Flow.Column.of("value", 50),
                        Flow.Column.of("limit", 50),
                        Flow.Column.of("unit", 32),
                        new Flow.Column("source", 69, Face.SMALL.withSize(9))));
        for (Finding finding : findings) {
            flow.row(
                    List.of(
                            mark(finding.severity()),
                            finding.subject(),
                            Words.words(finding.code().name()) + ": " + finding.message(),
                            finding.value(),
                            finding.limit(),
                            finding.unit(),
                            finding.source()));
        }
    }

    /** A shape beside the word, so that it is seen at a glance on a bad print too. */
    private static String mark(Severity severity) {
        return switch (severity) {
            case STOP -> "■ STOP";
            case CAUTION -> "▲ CAUTION";
            case NOTE -> "○ NOTE";
        };
    }

    private List<Finding> all() {
        Set<Finding> findings = new LinkedHashSet<>(output.report().violations());
        findings.addAll(output.plan().findings());
        findings.addAll(output.readJob().job().readingFindings());
        return findings.stream()
                .sorted(Comparator.comparing(Finding::severity).reversed())
                .toList();
    }
}
