package underhook.adapter.job;

import underhook.adapter.job.text.Fields;
import underhook.adapter.job.text.Source.Found;
import underhook.core.finding.FindingCode;

/** The version that every YAML file states. */
final class Versions {
    private static final String CURRENT = "1";

    private Versions() {}

    static void check(Fields fields) {
        String version = fields.text("version");
        if (version.isEmpty() || version.equals(CURRENT)) {
            return;
        }
        boolean newer = version.matches("[1-9][0-9]{0,8}");
        fields.fault(
                FindingCode.VERSION_UNKNOWN,
                "version",
                newer ? "is newer than this program knows" : "is no version",
                new Found(version, newer ? "1; a newer program reads it" : "1"));
    }
}
