package underhook.adapter.table;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import underhook.app.port.OutputWriter;
import underhook.app.port.Refusal;
import underhook.app.port.RefusalWriter;
import underhook.core.finding.Finding;

/**
 * Writes findings.csv: the findings of the plan, then what the verifier refuses. With none there is one
 * row that says so, for it carries the caution too.
 */
public final class FindingsCsvWriter implements OutputWriter, RefusalWriter {
    private static final List<String> COLUMNS =
            List.of("code", "severity", "subject", "value", "limit", "unit", "source", "message");

    @Override
    public String fileName() {
        return "findings.csv";
    }

    @Override
    public void write(Output output, Path file) throws IOException {
        List<Finding> findings =
                Stream.concat(
                                output.plan().findings().stream(),
                                output.report().violations().stream())
                        .toList();
        try (Table table = Table.open(file, output, COLUMNS)) {
            rows(table, findings);
        }
    }

    @Override
    public void write(Refusal refusal, Path file) throws IOException {
        try (Table table = Table.open(file, refusal.job(), refusal.planId(), COLUMNS)) {
            rows(table, refusal.findings());
        }
    }

    private static void rows(Table table, List<Finding> findings) {
        findings.forEach(finding -> table.row(cells(finding)));
        if (findings.isEmpty()) {
            table.row(List.of("", "", "", "", "", "", "", "No findings."));
        }
    }

    private static List<String> cells(Finding finding) {
        return List.of(
                finding.code().name(),
                finding.severity().name(),
                finding.subject(),
                finding.value(),
                finding.limit(),
                finding.unit(),
                finding.source(),
                finding.message());
    }
}
