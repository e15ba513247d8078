package underhook.adapter.paper;

import java.io.IOException;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import underhook.app.port.OutputWriter.Output;
import underhook.core.finding.Finding;
import underhook.core.finding.Severity;
import underhook.core.plan.LeftOut;

/** Everything that was found, what can hurt most first. */
final class FindingPages {
    private static final Face WHAT = new Face(false, 9.5);

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
        flow.heading(Words.count(findings.size(), leftOut.isEmpty() ? "finding" : "other finding"));
        if (findings.isEmpty()) {
            return;
        }
        flow.table(
                List.of(
                        Flow.Column.strong("", 78),
                        Flow.Column.strong("about", 76),
                        new Flow.Column("what", 235, WHAT),
                        new Flow.Column("found, allowed", 70, WHAT),
                        new Flow.Column("source", 68, Face.SMALL)));
        for (List<Finding> alike : alike(findings)) {
            Finding finding = alike.get(0);
            flow.row(
                    List.of(
                            mark(finding.severity()),
                            alike.stream().map(Finding::subject).collect(Collectors.joining(", ")),
                            Words.words(finding.code().name()) + ": " + finding.message(),
                            figures(finding),
                            finding.source()));
        }
    }

    /** What says the same of several things shares a row. */
    private static Collection<List<Finding>> alike(List<Finding> findings) {
        return findings.stream()
                .collect(
                        Collectors.groupingBy(
                                finding ->
                                        new Finding(
                                                finding.code(),
                                                finding.severity(),
                                                "",
                                                finding.value(),
                                                finding.limit(),
                                                finding.unit(),
                                                finding.source(),
                                                finding.message()),
                                LinkedHashMap::new,
                                Collectors.toList()))
                .values();
    }

    private static String figures(Finding finding) {
        String both =
                finding.value()
                        + (finding.value().isEmpty() || finding.limit().isEmpty() ? "" : ", ")
                        + finding.limit();
        return both.isEmpty() ? "" : both + " " + finding.unit();
    }

    /** A shape beside the word, so that it is seen at a glance on a bad print too. */
    private static String mark(Severity severity) {
        return switch (severity) {
            case STOP -> "■ STOP";
            case CAUTION -> "▲ CAUTION";
            case NOTE -> "○ NOTE";
        };
    }

    /** What left a load out is told with it. */
    private boolean standsAbove(Finding finding) {
        return output.plan().leftOut().stream()
                .anyMatch(
                        left ->
                                left.code() == finding.code()
                                        && left.load().value().equals(finding.subject())
                                        && left.message().equals(finding.message()));
    }

    private List<Finding> all() {
        Set<Finding> findings = new LinkedHashSet<>(output.report().all());
        findings.addAll(output.plan().findings());
        findings.addAll(output.readJob().job().readingFindings());
        return findings.stream()
                .filter(finding -> !standsAbove(finding))
                .sorted(Comparator.comparing(Finding::severity).reversed())
                .toList();
    }
}
