package underhook.adapter.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.app.port.JobReading;
import underhook.core.aircraft.HoverChart;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.job.HoverTable;
import underhook.core.job.Job;
import underhook.core.job.Load;
import underhook.core.job.LoadId;
import underhook.core.job.Machine;
import underhook.core.job.MassStatus;
import underhook.core.job.PlaceId;
import underhook.core.job.Rules;
import underhook.core.job.WeatherHour;

class JobFolderReaderTest {
    @TempDir Path folder;

    private Job good(SampleJob sample) {
        JobReading reading = sample.readIn(folder);
        assertThat(reading.faults()).isEmpty();
        return reading.job().orElseThrow().job();
    }

    /** What is said of a job, but for that this one brings no raster of trees. */
    private static List<Finding> said(Job job) {
        return job.readingFindings().stream()
                .filter(one -> one.code() != FindingCode.FILE_ABSENT)
                .toList();
    }

    /** A wire that nobody entered is not there for the program: whoever has no file must read so. */
    @Test
    void says_what_is_not_known_where_no_file_states_it() {
        Job bare =
                good(
                        new SampleJob()
                                .with("job.yaml", "wires: wires.geojson\n", "")
                                .with("job.yaml", "map: map.geojson\n", ""));

        assertThat(bare.readingFindings())
                .extracting(f -> f.code() + " " + f.severity() + " " + f.subject())
                .containsExactly(
                        "FILE_ABSENT CAUTION canopy",
                        "FILE_ABSENT CAUTION map",
                        "FILE_ABSENT CAUTION wires");
        assertThat(good(new SampleJob()).readingFindings())
                .singleElement()
                .satisfies(
                        one -> {
                            assertThat(one.subject()).isEqualTo("canopy");
                            assertThat(one.message()).contains("rules' canopy-on-legs-m");
                        });
    }

    @Test
    void reads_a_folder_without_fault() {
        Job job = good(new SampleJob());

        assertThat(job.places()).hasSize(4);
        assertThat(job.loads()).hasSize(4);
        assertThat(job.wires()).hasSize(1);
        assertThat(job.zones()).hasSize(1);
        assertThat(job.features()).hasSize(1);
        assertThat(job.releaseAreas()).hasSize(1);
        assertThat(job.inputs()).hasSize(11);
        assertThat(said(job)).isEmpty();
        assertThat(job.rules().costs().peopleCents()).isEqualTo(1055);
        assertThat(job.weather().hours().get(0).from()).isEqualTo("2026-09-08T08:00:00Z");
    }

    /** docs/formats.md: two minutes where nothing is stated; what is stated holds, nothing kept free too. */
    @Test
    void reads_what_is_kept_free_to_shut_down() {
        assertThat(duty("").shutDown()).isEqualTo(Rules.ShutDown.USUAL);
        assertThat(duty("").stretchS()).isEqualTo(10_680);
        assertThat(duty("shut-down-margin-min: 5\n").shutDown())
                .isEqualTo(new Rules.ShutDown(300, true));
        assertThat(duty("shut-down-margin-min: 0\n").stretchS()).isEqualTo(10_800);
    }

    private Rules.Duty duty(String more) {
        String line = "engine-on-hours: 3\n";
        return good(new SampleJob().with("rules.yaml", line, line + more)).rules().duty();
    }

    @Test
    void reads_on_which_side_the_pilot_looks_down() {
        assertThat(good(new SampleJob()).machine().pilotSide()).isEqualTo(Machine.PilotSide.RIGHT);
        assertThat(
                        good(new SampleJob()
                                        .with(
                                                "machine.yaml",
                                                "seats: 4\n",
                                                "seats: 4\npilot-side: left\n"))
                                .machine()
                                .pilotSide())
                .isEqualTo(Machine.PilotSide.LEFT);
        assertThat(
                        new SampleJob()
                                .with("machine.yaml", "seats: 4\n", "seats: 4\npilot-side: up\n")
                                .readIn(folder)
                                .faults())
                .singleElement()
                .asString()
                .contains("pilot-side");
    }

    @Test
    void keeps_a_mass_as_typed_and_converts_it_once() {
        Job job = good(new SampleJob());

        Load pounds = job.getLoad(new LoadId("L02"));
        assertThat(pounds.massTyped()).isEqualTo("440 lb");
        // 440 x 0.45359237 by hand; exact to the printed digits.
        assertThat(pounds.massKg().getAsDouble()).isCloseTo(199.5806428, within(1e-9));
        Load about = job.getLoad(new LoadId("L03"));
        assertThat(about.massStatus()).isEqualTo(MassStatus.ESTIMATED);
        assertThat(about.massTyped()).isEqualTo("ca. 200 kg");
        assertThat(job.getLoad(new LoadId("L04")).massStatus()).isEqualTo(MassStatus.MISSING);
    }

    /** By hand: 5 lb/min is 5 x 0.45359237 kg in 60 s; 300 lb/h is the same; 138 kg/h is 2.3 kg/min. */
    @Test
    void reads_a_burn_in_the_units_of_the_trade() {
        for (String written :
                List.of(
                        "burn-lb-per-min: 5",
                        "burn-lb-per-h: 300",
                        "burn-kg-per-min: 300 pph",
                        "burn-kg-per-h: 5 lb/min")) {
            Job job =
                    good(
                            new SampleJob()
                                    .with(
                                            "machine.yaml",
                                            "burn-kg-per-min: 2.3\nhover",
                                            written + "\nhover"));
            assertThat(job.machine().burnKgPerS())
                    .as(written)
                    .isCloseTo(0.0377993642, within(1e-9));
        }
        Job kilograms =
                good(
                        new SampleJob()
                                .with(
                                        "machine.yaml",
                                        "hover-burn-kg-per-min: 2.5",
                                        "hover-burn-kg-per-h: 150")
                                .with(
                                        "rules.yaml",
                                        "refuel-kg-per-min: 25",
                                        "refuel-lb-per-min: 55"));
        assertThat(kilograms.machine().hoverBurnKgPerS()).isCloseTo(2.5 / 60, within(1e-12));
        // 55 x 0.45359237 / 60 by hand.
        assertThat(kilograms.rules().refuelling().refuelKgPerS())
                .isCloseTo(0.4157930058, within(1e-9));
    }

    @Test
    void counts_the_wind_that_was_seen_and_the_warmest_hour_to_come() {
        Job job =
                good(
                        new SampleJob()
                                .with("job.yaml", "weather.csv", "weather.txt")
                                .with("job.yaml", "  until: \"18:00\"\n", "")
                                .file(
                                        "weather.txt",
                                        """
                                        METAR YUDO 080720Z 24014G29KT 9999 SCT040 14/09 Q1018=
                                        TAF YUDO 080500Z 0807/0812 24006KT 9999 TX22/0813Z TX19/0912Z=
                                        """));

        List<WeatherHour> hours = job.weather().hours();
        assertThat(hours.get(0).gustMPerS()).isCloseTo(29 * 1852 / 3600.0, within(1e-9));
        assertThat(hours.get(1).windMPerS()).isCloseTo(14 * 1852 / 3600.0, within(1e-9));
        assertThat(hours.get(2).windMPerS()).isCloseTo(6 * 1852 / 3600.0, within(1e-9));
        assertThat(said(job)).anyMatch(one -> one.code() == FindingCode.WEATHER_HELD);
        // 22 °C of the TAF, exact.
        assertThat(hours.get(0).temperatureK()).isCloseTo(295.15, within(1e-9));
    }

    @Test
    void makes_hours_of_reports_and_takes_the_worse_where_they_leave_a_choice() {
        Job job =
                good(
                        new SampleJob()
                                .with("job.yaml", "weather.csv", "weather.txt")
                                .with("job.yaml", "  until: \"18:00\"\n", "")
                                .file(
                                        "weather.txt",
                                        """
                                        METAR YUDO 080650Z 24004KT 9999 SCT040 14/09 Q1018=
                                        TAF YUDO 080500Z 0807/0812 24006KT 9999 SCT040 TX14/0811Z
                                          TEMPO 0809/0811 26012G25KT
                                          FM081100 27010KT=
                                        """));

        List<WeatherHour> hours = job.weather().hours();
        assertThat(hours).hasSize(5);
        // Knots by definition 1852/3600 m/s; rounding of the division only.
        assertThat(hours.get(1).windMPerS()).isCloseTo(6 * 1852 / 3600.0, within(1e-9));
        assertThat(hours.get(2).windMPerS()).isCloseTo(12 * 1852 / 3600.0, within(1e-9));
        assertThat(hours.get(2).gustMPerS()).isCloseTo(25 * 1852 / 3600.0, within(1e-9));
        assertThat(hours.get(4).windMPerS()).isCloseTo(10 * 1852 / 3600.0, within(1e-9));
        assertThat(hours.get(4).from()).isEqualTo("2026-09-08T11:00:00Z");
        // 14 °C and 1018 hPa of the METAR, exact.
        assertThat(hours.get(4).temperatureK()).isCloseTo(287.15, within(1e-9));
        assertThat(hours.get(4).qnhPa()).isEqualTo(101_800);
        assertThat(said(job))
                .singleElement()
                .matches(one -> one.code() == FindingCode.WEATHER_HELD);
    }

    @Test
    void leaves_out_the_hours_at_either_end_whose_wind_has_no_direction() {
        Job job =
                reports(
                        """
                        METAR YUDO 080650Z VRB02KT 9999 14/09 Q1018=
                        TAF YUDO 080500Z 0807/0814 VRB02KT 9999 TX20/0813Z
                          FM080900 24006KT
                          FM081200 VRB03KT=
                        """);

        // Zone -01:00: 09 to 12 UTC are eight to eleven by the job's clock.
        assertThat(job.weather().hours())
                .extracting(WeatherHour::from)
                .containsExactly(
                        Instant.parse("2026-09-08T09:00:00Z"),
                        Instant.parse("2026-09-08T10:00:00Z"),
                        Instant.parse("2026-09-08T11:00:00Z"));
        assertThat(job.weather().until()).isEqualTo("2026-09-08T12:00:00Z");
        assertThat(said(job))
                .anyMatch(
                        one ->
                                one.code() == FindingCode.REPORT_UNREADABLE
                                        && one.message()
                                                .contains("from 06:00, 07:00, 11:00, 12:00."));
    }

    @Test
    void says_in_which_hours_the_wind_may_come_from_elsewhere() {
        String taf =
                """
                METAR YUDO 080450Z 24004KT 9999 14/09 Q1018=
                TAF YUDO 080500Z 0807/0812 24006KT 9999 TX20/0813Z
                  TEMPO 0808/0809 %s
                  TEMPO 0810/0811 %s=
                """;

        assertThat(said(reports(taf.formatted("06015KT", "VRB15G30KT"))))
                .anyMatch(one -> one.message().contains("in the hours from 07:00, 09:00."));
        // 30 degrees either side is what a wind from one direction varies by.
        assertThat(said(reports(taf.formatted("27015KT", "21015G30KT"))))
                .noneMatch(one -> one.message().contains("elsewhere"));
        assertThat(said(reports(taf.formatted("27515KT", "20515G30KT"))))
                .anyMatch(one -> one.message().contains("in the hours from 07:00, 09:00."));
    }

    private Job reports(String text) {
        return good(
                new SampleJob()
                        .with("job.yaml", "weather.csv", "weather.txt")
                        .with("job.yaml", "  until: \"18:00\"\n", "")
                        .file("weather.txt", text));
    }

    @Test
    void says_what_it_doubts_about_a_place_without_refusing_the_job() {
        Job job =
                good(
                        new SampleJob()
                                .with("places.csv", "380,120,100", "380,120,130")
                                .with("places.csv", "900,300,", "9000,300,"));

        assertThat(said(job))
                .extracting(f -> f.code() + " " + f.severity() + " " + f.subject())
                .containsExactly("ELEVATION_DIFFERS CAUTION S01", "OUTSIDE_TERRAIN STOP H");
    }

    /** By hand: the places lie near 15° west, where the sun is an hour behind Greenwich. */
    @Test
    void says_that_a_zone_is_hours_off_the_sun() {
        assertThat(said(good(new SampleJob().with("job.yaml", "zone: -01:00", "zone: \"+03:30\""))))
                .extracting(f -> f.code() + " " + f.severity() + " " + f.subject())
                .containsExactly("ZONE_DOUBTED CAUTION zone");
        assertThat(
                        said(good(
                                        new SampleJob()
                                                .with(
                                                        "job.yaml",
                                                        "zone: -01:00",
                                                        "zone: \"+18:00\"")))
                                .get(0)
                                .message())
                .contains("highest there at about 07:00");
        assertThat(said(good(new SampleJob().with("job.yaml", "zone: -01:00", "zone: \"+02:30\""))))
                .isEmpty();
        assertThat(said(good(new SampleJob().with("job.yaml", "zone: -01:00", "zone: \"-04:30\""))))
                .isEmpty();
    }

    /** 20 min where people work below: WAC-296-45. */
    @Test
    void says_that_a_reserve_is_shorter_than_rules_ask_for() {
        assertThat(
                        said(
                                good(
                                        new SampleJob()
                                                .with(
                                                        "machine.yaml",
                                                        "reserve-min: 20",
                                                        "reserve-min: 2"))))
                .extracting(
                        f ->
                                f.code()
                                        + " "
                                        + f.severity()
                                        + " "
                                        + f.value()
                                        + " "
                                        + f.limit()
                                        + " "
                                        + f.unit())
                .containsExactly("RESERVE_SHORT CAUTION 2 20 min");
        assertThat(
                        said(
                                good(
                                        new SampleJob()
                                                .with(
                                                        "machine.yaml",
                                                        "reserve-min: 20",
                                                        "reserve-s: 1199.9"))))
                .extracting(Finding::value)
                .containsExactly("19.9");
        assertThat(said(good(new SampleJob()))).isEmpty();
    }

    /** A position copied from row to row: with nobody told, a load comes down on who waits at the other place. */
    @Test
    void says_that_two_places_lie_under_one_rotor() {
        Job copied = good(new SampleJob().with("places.csv", "900,300,,", "820,264,,"));

        assertThat(said(copied))
                .extracting(
                        f -> f.code() + " " + f.severity() + " " + f.subject() + " " + f.value())
                .containsExactly("PLACES_TOGETHER CAUTION H 4.0");
        // The rotor's radius is 5.1 m.
        assertThat(said(good(new SampleJob().with("places.csv", "900,300,,", "820,266,,"))))
                .isEmpty();
    }

    /** "open" says the same of feet as of metres. */
    @Test
    void a_clearing_in_feet_may_be_open_too() {
        Job job =
                good(new SampleJob().with("places.csv", "clearing_radius_m", "clearing_radius_ft"));

        assertThat(job.getPlace(new PlaceId("A")).clearingRadiusM()).isEqualTo(1000);
    }

    /** Zero stated is a place on the agonic line; zero assumed is a mistake waiting for a compass. */
    @Test
    void says_when_nobody_stated_the_variation() {
        Job silent = good(new SampleJob().with("job.yaml", "magnetic-variation-deg: 3\n", ""));
        Job stated = good(new SampleJob().with("job.yaml", "variation-deg: 3", "variation-deg: 0"));

        assertThat(silent.magneticVariationRad()).isZero();
        assertThat(said(silent))
                .extracting(f -> f.code() + " " + f.severity() + " " + f.subject())
                .containsExactly("VARIATION_ASSUMED CAUTION magnetic-variation-deg");
        assertThat(said(stated)).isEmpty();
    }

    /** At 1030 hPa the sea is 140 m below the table that begins at 0 m; by hand, common practice, no source. */
    @Test
    void a_tables_first_altitude_counts_below_it_where_that_is_stated() {
        String steps = "rounded-down-to-kg: 5\n";
        HoverTable silent = good(new SampleJob()).machine().hover();
        HoverTable stated =
                good(new SampleJob()
                                .with(
                                        "machine.yaml",
                                        steps,
                                        steps + "  first-altitude-counts-below: yes\n"))
                        .machine()
                        .hover();

        assertThat(HoverChart.of(silent, 3000).massKg(-140, 278.15).isDone()).isFalse();
        assertThat(HoverChart.of(stated, 3000).massKg(-140, 278.15).getValue())
                .isEqualTo(HoverChart.of(silent, 3000).massKg(0, 278.15).getValue());
        assertThat(HoverChart.of(stated, 3000).massKg(700, 278.15).getValue())
                .isEqualTo(HoverChart.of(silent, 3000).massKg(700, 278.15).getValue());
        assertThat(HoverChart.of(stated, 3000).massKg(-1001, 278.15).isDone()).isFalse();
        assertThat(HoverChart.of(stated, 3000).massKg(-140, 272).isDone()).isFalse();
        assertThat(stated.source()).contains("below its first altitude");
    }

    /** Rasters of 3 seconds of arc have cells of about 90 m. */
    @Test
    void says_that_wide_cells_hide_what_rises_between_them() {
        Job job =
                good(
                        new SampleJob()
                                .with("job.yaml", "terrain.tif", "coarse.tif")
                                .file("coarse.tif", "raster"));

        assertThat(said(job))
                .extracting(f -> f.code() + " " + f.severity() + " " + f.value() + " " + f.limit())
                .containsExactly("TERRAIN_COARSE CAUTION 90 20");
    }

    /** A cell of a grid in feet, 66 ft = 20.1168 m, is over the limit, and reads so. */
    @Test
    void a_cell_a_little_over_the_limit_reads_as_over_it() {
        Job job =
                good(
                        new SampleJob()
                                .with("job.yaml", "terrain.tif", "coarse-66ft.tif")
                                .file("coarse-66ft.tif", "raster"));

        assertThat(said(job))
                .extracting(f -> f.code() + " " + f.value() + " " + f.limit())
                .containsExactly("TERRAIN_COARSE 20.2 20");
    }
}
