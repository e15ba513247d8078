package underhook.adapter.table;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import underhook.app.port.FindingsWriter;
import underhook.core.finding.Finding;

/**
 * Writes findings.csv: the findings of the plan, then what the verifier refuses. With none there is one
 * row that says so, for it carries the caution too.
 */
public final class FindingsCsvWriter implements FindingsWriter {
    private static final List<String> COLUMNS =
            List.of("code", "severity", "subject", "value", "limit", "unit", "source", "message");

    @Override
    public String fileName() {
        return "findings.csv";
    }

    @Override
    public void write(Output output, Path file) throws IOException {
        List<Finding> findings =
                Stream.concat(output.plan().findings().stream(), output.report().all().stream())
                        .toList();
        try (Table table = Table.open(file, output, COLUMNS)) {
            write(findings, table);
        }
    }

    @Override
    public void writeRefusal(List<Finding> findings, Path file) throws IOException {
        try (Table table = Table.openWithoutPlan(file, COLUMNS)) {
            write(findings, table);
        }
    }

    private static void write(List<Finding> findings, Table table) {
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
