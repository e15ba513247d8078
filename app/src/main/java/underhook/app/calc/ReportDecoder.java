package underhook.app.calc;

import java.util.Map;
import underhook.core.finding.Outcome;

/** Decodes the text of a METAR or TAF into named fields; what the text does not say stays absent. */
@FunctionalInterface
public interface ReportDecoder {
    /** The fields, or refused with REPORT_UNREADABLE. */
    Outcome<Map<String, Object>> decode(String text);
}
