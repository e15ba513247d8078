package underhook.core.air.report;

import java.util.List;

/**
 * A trend of a METAR or a change period of a TAF.
 *
 * @param change its words: BECMG, TEMPO, FM, PROB30, PROB40 TEMPO …
 * @param during from and until, UTC; empty where the report gives no such time
 * @param times the times as decoded for printing
 */
public record ReportPart(
        String change, List<DayTime> during, List<ReportField> times, Conditions conditions) {
    public ReportPart {
        during = List.copyOf(during);
        times = List.copyOf(times);
    }
}
