package underhook.assembly;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;
import underhook.core.finding.FindingCode;

class ReportsTest {
    @Test
    void numbers_are_numbers_and_layers_stand_together() {
        // Read by hand; FAA-AIM 7-1.
        Map<String, Object> fields =
                Reports.decode("METAR LOXX 251520Z 24012G25KT 9999 FEW030 SCT045 12/M01 Q1013")
                        .getValue();

        assertThat(fields)
                .containsEntry("station", "LOXX")
                .containsEntry("windFromTrueDeg", 240.0)
                .containsEntry("windKt", 12.0)
                .containsEntry("gustKt", 25.0)
                .containsEntry("temperatureC", 12.0)
                .containsEntry("dewpointC", -1.0)
                .containsEntry("qnhHpa", 1013.0)
                .containsEntry("cloud", "FEW 3000 ft SCT 4500 ft");
    }

    @Test
    void what_a_report_does_not_say_stays_absent() {
        assertThat(Reports.decode("METAR LOXX 251520Z 24012KT").getValue())
                .doesNotContainKeys("gustKt", "temperatureC", "qnhHpa", "visibilityM");
    }

    @Test
    void what_is_no_report_is_refused() {
        assertThat(Reports.decode("good morning").findings())
                .singleElement()
                .matches(finding -> finding.code() == FindingCode.REPORT_UNREADABLE);
    }
}
