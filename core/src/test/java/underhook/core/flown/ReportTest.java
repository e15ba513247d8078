package underhook.core.flown;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import underhook.core.job.CrewId;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;

/** The forms of docs/day-api.md. */
class ReportTest {
    @Test
    void reads_each_form() {
        assertThat(Report.read("late Q 30"))
                .contains(new Report.CrewLate(new CrewId("Q"), Duration.ofMinutes(30)));
        assertThat(Report.read("heavy L20 412")).contains(new Report.Heavy(new LoadId("L20"), 412));
        assertThat(Report.read("closed S06")).contains(new Report.PlaceClosed(new PlaceId("S06")));
        assertThat(Report.read("missing L20")).contains(new Report.LoadMissing(new LoadId("L20")));
        assertThat(Report.read("early 45")).contains(new Report.WindEarly(Duration.ofMinutes(45)));
        assertThat(Report.read("other come and look")).contains(new Report.Other("come and look"));
        assertThat(Report.read("moved S06 90 40 15"))
                .contains(new Report.PlaceMoved(new PlaceId("S06"), Math.PI / 2, 40, 15));
        assertThat(Report.read("stands S06 180 35 12"))
                .contains(new Report.StandsThere(new PlaceId("S06"), Math.PI, 35, 12));
    }

    /** 1 kt is 1852 m an hour: ISO 80000-3. */
    @Test
    void a_gust_is_never_less_than_the_mean() {
        Report.WindSeen seen = (Report.WindSeen) Report.read("wind 360 20 10").orElseThrow();

        assertThat(seen.fromTrueRad()).isZero();
        assertThat(seen.meanMPerS()).isCloseTo(20 * 1852 / 3600.0, within(1e-9));
        assertThat(seen.gustMPerS()).isEqualTo(seen.meanMPerS());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "late Q",
                "late Q -5",
                "late Q 30 or so",
                "heavy L20 0",
                "moved S06 90 0 15",
                "moved S06 90 501 15",
                "stands S06 180 35 0",
                "stands S06 180 600 12",
                "wind 230 14",
                "Late Q 30"
            })
    void says_nothing_of_what_it_cannot_read(String note) {
        assertThat(Report.read(note)).isEqualTo(Optional.empty());
    }
}
