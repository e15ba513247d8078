package underhook.adapter.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.adapter.job.text.Faults;
import underhook.adapter.job.text.Source;
import underhook.adapter.job.text.Yaml;
import underhook.app.port.Fault;
import underhook.app.port.JobReading;
import underhook.app.port.RasterReader;
import underhook.core.finding.FindingCode;

class JobFaultsTest {
    private static final String DUTY = "duty-from: \"05:45\"";

    @TempDir Path folder;

    private List<String> faults(SampleJob sample) {
        return sample.readIn(folder).faults().stream()
                .map(fault -> fault.code() + " " + fault)
                .toList();
    }

    private void assertOnly(SampleJob sample, String start) {
        assertThat(faults(sample)).singleElement().asString().startsWith(start);
    }

    @Test
    void refuses_an_empty_folder() {
        JobReading reading = SampleJob.reader().read(folder);

        assertThat(reading.faults()).extracting(Fault::code).containsExactly(FindingCode.JOB_EMPTY);
    }

    @Test
    void refuses_a_folder_without_job_yaml() throws IOException {
        Files.writeString(folder.resolve("loads.csv"), "id\n");

        assertThat(SampleJob.reader().read(folder).faults())
                .extracting(Fault::toString)
                .containsExactly("job.yaml: is missing, job.yaml, which names the other files");
    }

    /** 600 kg/min are 79366 lb/h: 600 x 60 / 0.45359237, by hand. */
    @Test
    void says_what_is_allowed_for_a_burn() {
        String burn = "burn-kg-per-min: 2.3\nhover";
        assertOnly(
                new SampleJob().with("machine.yaml", burn, "burn-lb-per-h: 80000\nhover"),
                "FIELD_OUT_OF_RANGE machine.yaml:");
        assertThat(
                        faults(
                                new SampleJob()
                                        .with("machine.yaml", burn, "burn-lb-per-h: 80000\nhover")))
                .singleElement()
                .asString()
                .contains("burn-lb-per-h", "at most 600 kg/min", "to 79366.41 lb/h");
        assertThat(
                        faults(
                                new SampleJob()
                                        .with(
                                                "machine.yaml",
                                                burn,
                                                "burn-kg-per-min: 45 gal/h\nhover")))
                .singleElement()
                .asString()
                .contains("unknown unit", "kg/min or kg/h or lb/min or lb/h");
        assertThat(faults(new SampleJob().with("machine.yaml", burn, "hover")))
                .singleElement()
                .asString()
                .contains("burn-kg-per-min, burn-kg-per-h, burn-lb-per-min, burn-lb-per-h");
    }

    private static SampleJob withOtherMachines(String named) {
        return new SampleJob()
                .with(
                        "job.yaml",
                        "machine: machine.yaml\n",
                        "machine: machine.yaml\nother-machines: " + named + "\n");
    }

    @Test
    void says_of_a_machine_with_an_empty_list_of_lines_that_it_is_empty() {
        String list = "lines:\n  - {name: 25 m, length-m: 25, mass-kg: 34, limit-kg: 750}\n";
        assertThat(faults(new SampleJob().with("machine.yaml", list, "lines: []\n")))
                .singleElement()
                .asString()
                .contains("lines", "is empty", "a list of one line or more");
    }

    @Test
    void refuses_a_machine_named_twice() {
        assertThat(faults(withOtherMachines("machine.yaml")))
                .singleElement()
                .asString()
                .contains(
                        "other-machines: names a machine twice, found \"machine.yaml\", each"
                                + " machine once");
    }

    @Test
    void refuses_more_machines_than_days_can_be_planned_with() {
        String many = "[" + "machine.yaml, ".repeat(20) + "machine.yaml]";

        assertThat(faults(withOtherMachines(many)))
                .anyMatch(
                        fault ->
                                fault.contains(
                                        "other-machines: names too many machines, found \"21\", at"
                                                + " most 20"));
    }

    @Test
    void names_the_nearest_known_field() {
        assertOnly(
                new SampleJob()
                        .with(
                                "machine.yaml",
                                "hook-limit-kg: 750\n",
                                "hok-limit-kg: 750\nhook-limit-kg: 750\n"),
                "FIELD_UNKNOWN machine.yaml:9: hok-limit-kg: is no known field, perhaps"
                        + " \"hook-limit-kg\" is meant");
    }

    @Test
    void names_the_nearest_known_column() {
        assertOnly(
                new SampleJob().with("places.csv", "remarks", "remraks"),
                "FIELD_UNKNOWN places.csv:1: remraks: is no known column, perhaps \"remarks\" is"
                        + " meant");
    }

    @Test
    void refuses_a_field_that_stands_twice() {
        assertOnly(
                new SampleJob()
                        .with(
                                "rules.yaml",
                                "clearance-m: 5\nrotor",
                                "clearance-m: 5\nclearance-m: 6\nrotor"),
                "FIELD_UNREADABLE rules.yaml:5: clearance-m: stands twice, first in line 4");
    }

    /** By hand: 500 / 0.3048 = 1640.42 and 9000 / 0.3048 = 29527.56, each rounded inward. */
    @Test
    void says_what_is_allowed_in_the_unit_that_was_typed() {
        assertThat(
                        faults(
                                new SampleJob()
                                        .with("places.csv", "elevation_m", "elevation_ft")
                                        .with("places.csv", "-130,100,", "-130,40000,")))
                .singleElement()
                .asString()
                .endsWith(
                        "elevation_ft: is out of range, found \"40000\", between -500 and 9000 m,"
                                + " which is -1640.41 to 29527.55 ft");
    }

    /** Clocks of the EU go forward at 01:00 UTC on the last Sunday of March and back on that of October (2000/84/EC). */
    @Test
    void refuses_a_time_that_the_clock_skips_and_one_that_it_shows_twice() {
        assertOnly(
                onClockChange("2026-03-29", "02:30"),
                "FIELD_OUT_OF_RANGE rules.yaml:"
                        + dutyLine()
                        + ": duty-from: is skipped by the clock in Europe/Zurich, which goes from"
                        + " 02:00 to 03:00, found \"02:30\", a time before 02:00 or not before 03:00");
        assertOnly(
                onClockChange("2026-10-25", "02:30"),
                "FIELD_OUT_OF_RANGE rules.yaml:"
                        + dutyLine()
                        + ": duty-from: comes twice by the clock in Europe/Zurich, which goes from"
                        + " 03:00 to 02:00, found \"02:30\", 2026-10-25T02:30+02:00 or"
                        + " 2026-10-25T02:30+01:00");
        assertThat(faults(onClockChange("2026-10-25", "2026-10-25T02:30+01:00"))).isEmpty();
        assertThat(faults(onClockChange("2026-10-25", "03:00"))).isEmpty();
        assertThat(faults(onClockChange("2026-03-29", "03:00"))).isEmpty();
    }

    private static SampleJob onClockChange(String date, String dutyFrom) {
        return new SampleJob()
                .with("job.yaml", "date: 2026-09-08", "date: " + date)
                .with("job.yaml", "zone: -01:00", "zone: Europe/Zurich")
                .with("rules.yaml", DUTY, "duty-from: \"" + dutyFrom + "\"");
    }

    private static long dutyLine() {
        String rules = new SampleJob().files.getOrDefault("rules.yaml", "");
        return rules.substring(0, rules.indexOf(DUTY)).lines().count() + 1;
    }

    @Test
    void refuses_numbers_that_could_be_read_two_ways() {
        assertOnly(
                new SampleJob().with("rules.yaml", "final-m: 150", "final-m: 0150"),
                "FIELD_UNREADABLE rules.yaml:8: final-m: has a leading zero, found \"0150\"");
        assertOnly(
                new SampleJob().with("rules.yaml", "final-m: 150", "final-m: .nan"),
                "FIELD_UNREADABLE rules.yaml:8: final-m: is no number, found \".nan\"");
        assertOnly(
                new SampleJob().with("loads.csv", "L01,bag,A,S01,188", "L01,bag,A,S01,\"1,188\""),
                "FIELD_UNREADABLE loads.csv:2: mass_kg: has a comma in a number");
    }

    @Test
    void refuses_a_newer_version() {
        assertOnly(
                new SampleJob().with("crews.yaml", "version: 1", "version: 2"),
                "VERSION_UNKNOWN crews.yaml:1: version: is newer than this program knows, found"
                        + " \"2\"");
    }

    @Test
    void refuses_a_language_that_no_paper_speaks() {
        assertOnly(
                new SampleJob().with("crews.yaml", "stays: no", "stays: no\n    language: fi"),
                "FIELD_UNREADABLE crews.yaml:10: language: is no known word, found \"fi\"");
    }

    @Test
    void refuses_places_without_reference_system() {
        assertOnly(
                new SampleJob().with("job.yaml", "crs: \"EPSG:1\"\n", ""),
                "REFERENCE_SYSTEM_MISSING places.csv:2: x_m: has no reference system");
    }

    @Test
    void finds_one_place_with_its_axes_swapped() {
        assertOnly(
                new SampleJob()
                        .with("places.csv", "260,-130", "200260,100")
                        .with("places.csv", "380,120", "100,200380")
                        .with("places.csv", "820,260", "200820,100")
                        .with("places.csv", "900,300", "200900,100")
                        .with(
                                "job.yaml",
                                "zones: zones.geojson\nwires: wires.geojson\nmap: map.geojson\nrelease-areas: release.geojson\n",
                                ""),
                "AXES_SWAPPED places.csv:3: x_m: is far off. Perhaps easting and northing are"
                        + " swapped");
    }

    /** A sign of two parts, at whichever place of the file it stands. */
    @Test
    void reads_signs_outside_the_first_plane_anywhere_in_yaml() {
        for (int blanks = 0; blanks < 2100; blanks++) {
            String text = "#" + " ".repeat(blanks) + "\nname: 😀\n";
            Source source = new Source("some.yaml", new Faults());
            assertThat(Yaml.read(text, source)).as("%d blanks", blanks).isPresent();
        }
    }

    /** So far off that the plane of the others does not reach there: a fault all the same, and no failure. */
    @Test
    void finds_one_place_on_another_continent() {
        assertOnly(
                new SampleJob()
                        .file(
                                "places.csv",
                                """
                                id,kind,lon_deg,lat_deg
                                A,laydown,-12.00,46.80
                                S01,site,-12.01,46.81
                                S02,site,46.80,-12.01
                                H,landing,-12.00,46.80
                                """)
                        .with(
                                "job.yaml",
                                "zones: zones.geojson\nwires: wires.geojson\nmap: map.geojson\nrelease-areas: release.geojson\n",
                                ""),
                "AXES_SWAPPED places.csv:4: lon_deg: is far off. Perhaps easting and northing are"
                        + " swapped");
    }

    private static SampleJob withAllSwapped() {
        return new SampleJob()
                .file(
                        "places.csv",
                        """
                        id,kind,lon_deg,lat_deg
                        A,laydown,46.80,-12.00
                        S01,site,46.81,-12.01
                        S02,site,46.80,-12.01
                        H,landing,46.80,-12.00
                        """)
                .with(
                        "job.yaml",
                        "zones: zones.geojson\nwires: wires.geojson\nmap: map.geojson\nrelease-areas: release.geojson\n",
                        "");
    }

    @Test
    void finds_all_places_with_their_axes_swapped() {
        assertOnly(withAllSwapped(), "AXES_SWAPPED places.csv:2: lon_deg: is far off");
    }

    @Test
    void finds_places_too_near_a_pole_for_a_plane() {
        assertOnly(
                withAllSwapped()
                        .with("places.csv", "46.80,-12.00\nS01", "10,83.99\nS01")
                        .with("places.csv", "46.81,-12.01", "10.01,84.01")
                        .with("places.csv", "46.80,-12.01", "10,83.99")
                        .with("places.csv", "46.80,-12.00\n", "10,83.99\n"),
                "FIELD_OUT_OF_RANGE places.csv:3: lon_deg: is too near the pole");
    }

    private static RasterReader.Reading doesNotReach() {
        Fault fault =
                new Fault(
                        FindingCode.OUTSIDE_TERRAIN,
                        "terrain.tif",
                        0,
                        "",
                        "does not reach the job",
                        "",
                        "");
        return new RasterReader.Reading(Optional.empty(), List.of(fault));
    }

    /** 88° east the wrong way round would lie at 88° north. */
    @Test
    void says_that_the_terrain_does_not_reach_a_job_far_east() {
        withAllSwapped()
                .with("places.csv", "46.80,-12.00\nS01", "88.30,22.50\nS01")
                .with("places.csv", "46.81,-12.01", "88.31,22.51")
                .with("places.csv", "46.80,-12.01", "88.30,22.51")
                .with("places.csv", "46.80,-12.00\n", "88.30,22.50\n")
                .writeTo(folder);
        RasterReader nothingThere = request -> doesNotReach();

        assertThat(SampleJob.reader(nothingThere, List.of(), List.of()).read(folder).faults())
                .extracting(Fault::code)
                .containsExactly(FindingCode.OUTSIDE_TERRAIN);
    }

    @Test
    void finds_them_too_when_the_terrain_does_not_reach_the_wrong_spot() {
        SampleJob sample = withAllSwapped();
        sample.writeTo(folder);
        RasterReader cutOut =
                request ->
                        request.frame().origin().latDeg() > 0
                                ? new RasterReader.Reading(
                                        Optional.of(new SampleJob.Disc(request.frame(), 10)),
                                        List.of())
                                : doesNotReach();

        assertThat(SampleJob.reader(cutOut, List.of(), List.of()).read(folder).faults())
                .extracting(Fault::code)
                .containsExactly(FindingCode.OUTSIDE_TERRAIN, FindingCode.AXES_SWAPPED);
    }

    @Test
    void refuses_a_chart_with_a_hole() {
        assertOnly(
                new SampleJob().with("machine.yaml", "[2050, 2050, 1950]", "[2050, ~, 1950]"),
                "CHART_HOLE machine.yaml:27: mass-kg: has a hole");
        assertOnly(
                new SampleJob().with("machine.yaml", "[2050, 2050, 1950]", "[2050, 1950]"),
                "CHART_HOLE machine.yaml:27: mass-kg: does not fit the pressure altitudes");
        assertOnly(
                new SampleJob().with("machine.yaml", "[2050, 2050, 1950]", "[]"),
                "CHART_HOLE machine.yaml:27: mass-kg: does not fit the pressure altitudes");
        assertOnly(
                new SampleJob().with("machine.yaml", "[0, 500, 1000]", "[~, 500, 1000]"),
                "CHART_HOLE machine.yaml:24: pressure-altitude-m: has a hole");
        assertOnly(
                new SampleJob().with("machine.yaml", "[0, 500, 1000]", "[]"),
                "CHART_HOLE machine.yaml:24: pressure-altitude-m: is empty");
    }

    /** Read as none, a zone that people rely on would be flown over. */
    @Test
    void refuses_features_that_are_no_list() {
        for (String none : List.of("null", "{}", "\"\"", "5")) {
            assertOnly(
                    new SampleJob()
                            .file(
                                    "zones.geojson",
                                    "{\"type\":\"FeatureCollection\",\n\"features\":" + none + "}"),
                    "FIELD_UNREADABLE zones.geojson:2: features: is no list");
        }
    }

    @Test
    void says_once_that_no_kinds_are_known() {
        SampleJob sample = new SampleJob();
        sample.files.computeIfPresent(
                "rules.yaml", (name, text) -> text.replaceFirst("(?s)kinds:.*", "kinds: []\n"));

        assertOnly(sample, "FIELD_MISSING rules.yaml");
    }

    @Test
    void lists_long_names_cut_short() {
        assertThat(
                        faults(
                                new SampleJob()
                                        .with(
                                                "rules.yaml",
                                                "kind: bag",
                                                "kind: " + "x".repeat(3000))))
                .allSatisfy(fault -> assertThat(fault.toString().length()).isLessThan(500));
    }

    @Test
    void refuses_a_chart_that_carries_more_in_thinner_air() {
        assertOnly(
                new SampleJob().with("machine.yaml", "[2050, 2050, 1950]", "[2050, 1950, 2000]"),
                "FIELD_OUT_OF_RANGE machine.yaml:27: mass-kg: rises with the pressure altitude,"
                        + " found \"value 3 above value 2\"");
    }

    @Test
    void refuses_a_chart_that_carries_more_in_warmer_air() {
        // At one pressure altitude warmer air is thinner (ICAO Doc 7488: rho = p / (R T)).
        assertOnly(
                new SampleJob().with("machine.yaml", "[2050, 2050, 1950]", "[2050, 2050, 2050]"),
                "FIELD_OUT_OF_RANGE machine.yaml:27: mass-kg: rises with the temperature,"
                        + " found \"value 3 above that of the row before\"");
    }

    @Test
    void keeping_all_of_the_engine_time_free_is_a_fault() {
        assertOnly(
                new SampleJob()
                        .with(
                                "rules.yaml",
                                "engine-on-hours: 3\n",
                                "engine-on-hours: 3\nshut-down-margin-hours: 3\n"),
                "FIELD_OUT_OF_RANGE rules.yaml:29: shut-down-margin-hours: leaves nothing of the"
                        + " time with the engine on, less than engine-on");
    }

    @Test
    void names_a_field_that_is_missing_with_every_unit_it_may_have() {
        // Contract, section 2: units stand in every field name; docs/formats.md writes break-min.
        assertOnly(
                new SampleJob().with("rules.yaml", "break-min: 30\n", ""),
                "FIELD_MISSING rules.yaml:1: break-s: is missing, break-s, break-min, break-hours");
    }

    @Test
    void refuses_a_year_for_which_the_sun_is_not_known() {
        // Common practice, no source: a year typed wrong is said, it does not end the program.
        for (String year : List.of("1026", "1949", "1950", "2099", "9999")) {
            assertOnly(
                    new SampleJob().with("job.yaml", "date: 2026", "date: " + year),
                    "FIELD_OUT_OF_RANGE job.yaml:3: date: is out of range, found \"" + year);
        }
    }

    @Test
    void refuses_a_way_on_foot_that_stands_twice_or_leads_nowhere() {
        // Field guide, section 5: walking counts the longer time, and of two times nobody knows it.
        String way = "  - {between: [S01, S02], minutes: 15}\n";
        assertOnly(
                new SampleJob()
                        .with("crews.yaml", way, way + "  - {between: [S02, S01], minutes: 99}\n"),
                "ID_DUPLICATE crews.yaml:13: between: is a way that stands there already, found"
                        + " \"S02, S01\", each way once");
        assertOnly(
                new SampleJob().with("crews.yaml", "[S01, S02]", "[S01, S01]"),
                "FIELD_UNREADABLE crews.yaml:12: between: is one place, found \"S01, S01\"");
    }

    @Test
    void says_the_line_of_the_first_letter_that_is_no_utf_8() {
        // RFC 3629: 0xE4 opens a sequence of three bytes, and no comma is one of them.
        SampleJob sample = new SampleJob();
        sample.binaries.put(
                "places.csv",
                "id,kind\nA,laydown\nB\u00e4,site\n".getBytes(StandardCharsets.ISO_8859_1));

        assertOnly(sample, "FILE_UNREADABLE places.csv:3: is no UTF-8 text");
    }

    @Test
    void loses_no_row_to_a_quote_that_nothing_closes() {
        assertOnly(
                new SampleJob().with("places.csv", "H,landing", "H,\"landing"),
                "FILE_UNREADABLE places.csv:5: opens a quote that nothing closes");
    }

    @Test
    void takes_two_bytes_for_each_letter_for_no_text() {
        SampleJob sample = new SampleJob();
        sample.binaries.put(
                "places.csv", "id,kind\nA,laydown\n".getBytes(StandardCharsets.UTF_16BE));

        assertOnly(sample, "FILE_UNREADABLE places.csv:1: is no UTF-8 text");
    }

    @Test
    void refuses_a_wire_with_a_span_that_no_wire_has() {
        assertOnly(
                new SampleJob().with("wires.geojson", "[-11.98, 46.81]", "[-11.98, 6.81]"),
                "FIELD_OUT_OF_RANGE wires.geojson:2: geometry: has a piece of more than 50 km");
    }

    /** One digit that slipped: the place of the first point is right, and the file is not far off. */
    @Test
    void refuses_roads_and_release_areas_with_a_point_far_from_the_next() {
        assertOnly(
                new SampleJob().with("map.geojson", "[-11.98, 46.79]", "[-11.98, 47.79]"),
                "FIELD_OUT_OF_RANGE map.geojson:2: geometry: has a piece of more than 50 km");
        assertOnly(
                new SampleJob().with("release.geojson", "[-11.99, 46.81]", "[-10.99, 46.81]"),
                "FIELD_OUT_OF_RANGE release.geojson:2: geometry: has a piece of more than 50 km");
        // 0.44 degrees of latitude are 48.9 km.
        assertThat(faults(new SampleJob().with("map.geojson", "[-11.98, 46.79]", "[-12.0, 47.23]")))
                .isEmpty();
    }

    @Test
    void refuses_voltages_that_no_line_has_and_currencies_that_are_none() {
        assertOnly(
                new SampleJob().with("wires.geojson", "66000", "1000000000"),
                "FIELD_OUT_OF_RANGE wires.geojson:2: voltage_v: is out of range, found");
        assertOnly(
                new SampleJob().with("rules.yaml", "currency: EUR", "currency: Euro per minute"),
                "FIELD_UNREADABLE rules.yaml:");
    }

    @Test
    void takes_no_weather_of_another_day_however_long_it_is_held() {
        assertOnly(
                new SampleJob()
                        .with("weather.csv", "07:00", "2026-09-06T07:00-01:00")
                        .with("weather.csv", "08:00", "2026-09-06T08:00-01:00"),
                "FIELD_OUT_OF_RANGE weather.csv: time: says nothing about the job's day, found"
                        + " \"2026-09-06T08:00-01:00\", weather of 2026-09-08");
    }

    @Test
    void refuses_reports_that_cannot_be_right() {
        String taf = "TAF ZZZZ 080500Z 0807/0818 24006KT 9999 TX20/0813Z=\n";
        String metar = "METAR ZZZZ 080650Z 24004KT 9999 14/09 Q1018=\n";

        assertOnly(
                withReports(metar.replace("Q1018", "Q9018") + taf),
                "FIELD_OUT_OF_RANGE weather.txt: pressure: is out of range, found \"9018.0 hPa\"");
        assertOnly(
                withReports(metar.replace("14/09", "99/09") + taf),
                "FIELD_OUT_OF_RANGE weather.txt: temperature: is out of range");
        assertOnly(
                withReports(taf + metar.replace("14/09", "09/14")),
                "FIELD_OUT_OF_RANGE weather.txt:2: cannot be as it stands: The dewpoint in \"09/14\" is"
                        + " above the temperature");
        assertOnly(
                withReports(metar + taf.replace("0807/0818", "0818/0807")),
                "FIELD_MISSING weather.txt: ends before it begins");
        assertOnly(
                withReports(taf.replace(" TX20/0813Z", "")),
                "FIELD_MISSING weather.txt: has no pressure and no temperature");
    }

    /** Left out in silence, the forecast's gusts would be unknown to the day. */
    @Test
    void refuses_a_report_without_its_times() {
        String metar = "METAR ZZZZ 080650Z 24004KT 9999 14/09 Q1018=\n";

        assertOnly(
                withReports(metar + "TAF ZZZZ 0807/0818 24006G40KT 9999=\n"),
                "FIELD_MISSING weather.txt:2: is a report without its time of issue");
        assertOnly(
                withReports(metar + "TAF ZZZZ 080500Z 24006G40KT 9999=\n"),
                "FIELD_MISSING weather.txt:2: is a forecast without the time that it is for");
    }

    /** What was seen at 06:50Z holds for an hour, not until the evening. */
    @Test
    void refuses_to_hold_a_report_beyond_its_end() {
        String metar = "METAR ZZZZ 080650Z 24004KT 9999 14/09 Q1018=\n";
        String taf = "TAF ZZZZ 080500Z 0807/0818 24006KT 9999 TX20/0813Z=\n";

        assertOnly(
                withReports(metar)
                        .with("job.yaml", "between: hold", "between: hold\n  until: \"18:00\""),
                "FIELD_OUT_OF_RANGE job.yaml:16: until: is after the end of the reports, found"
                        + " \"18:00\", at most 2026-09-08T06:50-01:00");
        assertThat(
                        faults(
                                withReports(metar + taf)
                                        .with(
                                                "job.yaml",
                                                "between: hold",
                                                "between: hold\n  until: \"17:00\"")))
                .isEmpty();
    }

    /** Who ends the weather before the reports do is told which hour is the last of them. */
    @Test
    void refuses_to_end_before_the_last_hour_of_the_reports() {
        String reports =
                """
                METAR ZZZZ 080650Z 24004KT 9999 14/09 Q1018=
                TAF ZZZZ 080500Z 0807/0818 24006KT 9999 TX20/0813Z=
                """;

        assertOnly(
                withReports(reports)
                        .with("job.yaml", "between: hold", "between: hold\n  until: \"12:00\""),
                "FIELD_OUT_OF_RANGE job.yaml:16: until: is not after the last hour of the reports,"
                        + " found \"12:00\", later than 2026-09-08T16:00-01:00, or left out");
    }

    /** 14 °C at ten to seven is not what the machine hovers in at three. */
    @Test
    void refuses_to_hold_the_temperature_of_a_morning() {
        String metar = "METAR ZZZZ 080650Z 24004KT 9999 14/09 Q1018=\n";

        assertOnly(
                withReports(metar + "TAF ZZZZ 080500Z 0807/0818 24006KT 9999=\n"),
                "FIELD_MISSING weather.txt: forecasts no highest temperature of the job's day, a TAF"
                        + " with the warmest to come, such as TX24/0814Z");
        assertThat(faults(withReports(metar))).isEmpty();
    }

    /** The job's day, 2026-09-08 at -01:00, ends at 01:00 UTC on the ninth. */
    @Test
    void refuses_the_warmest_of_another_day_alone() {
        String reports =
                """
                METAR ZZZZ 080650Z 24004KT 9999 14/09 Q1018=
                TAF ZZZZ 080500Z 0807/0912 24006KT 9999 TX20/%sZ=
                """;

        for (String other : List.of("0713", "0913", "0901")) {
            assertOnly(
                    withReports(reports.formatted(other)),
                    "FIELD_MISSING weather.txt: forecasts no highest temperature of the job's day");
        }
        for (String today : List.of("0813", "0801", "0824")) {
            assertThat(faults(withReports(reports.formatted(today)))).isEmpty();
        }
        assertThat(faults(withReports(reports.formatted("0813Z TX19/0913")))).isEmpty();
    }

    @Test
    void refuses_an_hour_without_a_wind_direction_between_others() {
        assertOnly(
                withReports(
                        "METAR ZZZZ 080650Z 24004KT 9999 14/09 Q1018=\n"
                                + "TAF ZZZZ 080500Z 0807/0818 24006KT 9999 TX20/0813Z FM081000 VRB03KT"
                                + " FM081100 24008KT=\n"),
                "FIELD_MISSING weather.txt: has no wind with a direction at 09:00");
        assertOnly(
                withReports("METAR ZZZZ 080650Z VRB04KT 9999 14/09 Q1018=\n"),
                "FIELD_MISSING weather.txt: has no wind with a direction at 05:50");
    }

    private static SampleJob withReports(String text) {
        return new SampleJob()
                .with("job.yaml", "weather.csv", "weather.txt")
                .with("job.yaml", "  until: \"18:00\"\n", "")
                .file("weather.txt", text);
    }

    @Test
    void starts_the_machine_only_where_it_may_stand() {
        assertOnly(
                new SampleJob().with("job.yaml", "machine-start: A", "machine-start: S01"),
                "FIELD_OUT_OF_RANGE job.yaml:7: machine-start: is a place where the machine may not"
                        + " stand, found \"S01\"");
    }

    @Test
    void names_the_nearest_known_id() {
        assertOnly(
                new SampleJob().with("loads.csv", "L01,bag,A,S01", "L01,bga,A,S01"),
                "ID_UNKNOWN loads.csv:2: kind: is no known kind, found \"bga\", perhaps \"bag\" is"
                        + " meant");
        assertOnly(
                new SampleJob().with("crews.yaml", "start: A", "start: Q9"),
                "ID_UNKNOWN crews.yaml:6: start: is no known place, found \"Q9\"");
    }

    @Test
    void refuses_loads_that_wait_for_themselves_through_others() {
        assertThat(
                        faults(
                                new SampleJob()
                                        .with(
                                                "loads.csv",
                                                "0.9,0.9,1.1,,\nL02",
                                                "0.9,0.9,1.1,L03,\nL02")))
                .allMatch(text -> text.contains("after: waits for itself through others"))
                .hasSize(2);
    }

    @Test
    void refuses_a_job_whose_date_has_no_sun() {
        assertOnly(
                new SampleJob().with("job.yaml", "2026-09-08", "2026-12-08"),
                "NO_SUN job.yaml:3: date: ");
    }

    @Test
    void reads_no_file_outside_the_folder() {
        assertOnly(
                new SampleJob().with("job.yaml", "map: map.geojson", "map: ../map.geojson"),
                "FILE_UNREADABLE job.yaml:25: map: names no file of the job folder");
        assertOnly(
                new SampleJob().with("job.yaml", "map: map.geojson", "map: nap.geojson"),
                "FILE_MISSING job.yaml:25: map: names a file that is not there");
    }

    @Test
    void refuses_a_coordinate_that_is_no_number() {
        assertThat(faults(new SampleJob().with("wires.geojson", "[-12.0, 46.80]", "[NaN, 46.80]")))
                .singleElement()
                .asString()
                .startsWith("FILE_UNREADABLE wires.geojson:3: is no JSON from here on");
        assertOnly(
                new SampleJob().with("wires.geojson", "[-12.0, 46.80]", "[\"NaN\", 46.80]"),
                "FIELD_UNREADABLE wires.geojson:3: coordinates: is no number");
    }

    /** As a spreadsheet copies cells; a field in quotes is RFC 4180's. */
    @Test
    void reads_tabs_and_finds_the_separator_outside_quotes() {
        SampleJob sample = new SampleJob();
        sample.files.computeIfPresent(
                "loads.csv", (name, text) -> text.replace(',', '\t').replace("188", "188,5"));
        sample.with("places.csv", "id,kind,name", "id,\"kind\",\"name\"");

        JobReading reading = sample.readIn(folder);

        assertThat(reading.faults()).isEmpty();
        assertThat(reading.job().orElseThrow().job().loads().get(0).massKg()).hasValue(188.5);
    }

    @Test
    void reads_semicolons_decimal_commas_byte_order_mark_and_windows_lines() {
        SampleJob sample =
                new SampleJob()
                        .file(
                                "places.csv",
                                String.join(
                                        "\r\n",
                                        "\ufeffID;Kind;X m;Y-M",
                                        "",
                                        "A;laydown;260,5;-130",
                                        ";;;",
                                        "S01;site;380;120,25",
                                        "S02;site;820;260",
                                        "H;landing;900;300"));
        JobReading reading = sample.readIn(folder);

        assertThat(reading.faults()).isEmpty();
        assertThat(reading.job().orElseThrow().job().places()).hasSize(4);
    }

    @Test
    void reads_a_workbook_and_names_its_rows() throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (Workbook workbook = new Workbook(bytes, "Test", "1.0")) {
            Worksheet sheet = workbook.newWorksheet("places");
            List<String> names = List.of("id", "kind", "x_m", "y_m", "agreed");
            for (int i = 0; i < names.size(); i++) {
                sheet.value(0, i, names.get(i));
            }
            row(sheet, 1, "A", "laydown");
            row(sheet, 3, "S01", "site");
            row(sheet, 4, "S02", "siet");
            row(sheet, 5, "H", "landing");
        }
        SampleJob sample = new SampleJob().with("job.yaml", "places.csv", "places.xlsx");
        sample.binaries.put("places.xlsx", bytes.toByteArray());

        assertOnly(
                sample,
                "FIELD_UNREADABLE places.xlsx:5: kind: is no known word, found \"siet\", one of"
                        + " laydown, site, landing; perhaps \"site\" is meant");
    }

    @Test
    void takes_a_formula_that_was_never_worked_out_for_no_value() throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (Workbook workbook = new Workbook(bytes, "Test", "1.0")) {
            Worksheet sheet = workbook.newWorksheet("places");
            List<String> names = List.of("id", "kind", "x_m", "y_m", "canopy_m");
            for (int i = 0; i < names.size(); i++) {
                sheet.value(0, i, names.get(i));
            }
            row(sheet, 1, "A", "laydown");
            row(sheet, 2, "S01", "site");
            row(sheet, 3, "S02", "site");
            sheet.formula(3, 4, "9+9");
            row(sheet, 4, "H", "landing");
        }
        SampleJob sample = new SampleJob().with("job.yaml", "places.csv", "places.xlsx");
        sample.binaries.put("places.xlsx", bytes.toByteArray());

        assertOnly(
                sample, "FIELD_UNREADABLE places.xlsx:4: canopy_m: is no number, found \"=9+9\"");
    }

    private static void row(Worksheet sheet, int row, String id, String kind) {
        sheet.value(row, 0, id);
        sheet.value(row, 1, kind);
        sheet.value(row, 2, 100.5 + row);
        sheet.value(row, 3, 120);
    }

    @Test
    void reports_the_faults_of_every_file_at_once() {
        SampleJob sample =
                new SampleJob()
                        .with("job.yaml", "version: 1", "version: one")
                        .with("job.yaml", "magnetic-variation-deg", "magnetic-variaton-deg")
                        .with("places.csv", "S02,site", "S01,site")
                        .with("places.csv", "H,landing", "H,landin")
                        .with("loads.csv", "L01,bag,A,S01,188", "L01,bag,A,S01,-5")
                        .with("loads.csv", "L02,bag,A,S02,,440", "L02,bag,A,S02,180,440")
                        .with("machine.yaml", "seats: 4", "seats: 4.5")
                        .with("machine.yaml", "start-fuel-kg: 8\n", "")
                        .with("weather.csv", "1020,11", "1200,11")
                        .with("weather.csv", "08:00", "25:00")
                        .with("crews.yaml", "people: 4", "people: 0")
                        .with("crews.yaml", "[hook, receive, guy]", "[hok]")
                        .with("rules.yaml", "duty-hours: 12", "duty-hours: long")
                        .with("rules.yaml", "hover-exit: no", "hover-exit: maybe")
                        .with("zones.geojson", "no-fuel", "no-fule")
                        .with("wires.geojson", "\"highest_m\": 18, ", "")
                        .with("release.geojson", "[-11.99, 46.81], ", "");

        assertThat(faults(sample))
                .anyMatch(text -> text.startsWith("VERSION_UNKNOWN job.yaml:1: version"))
                .anyMatch(text -> text.startsWith("FIELD_UNKNOWN job.yaml:6: magnetic-variaton"))
                .anyMatch(text -> text.startsWith("ID_DUPLICATE places.csv:4: id"))
                .anyMatch(text -> text.startsWith("FIELD_UNREADABLE places.csv:5: kind"))
                .anyMatch(text -> text.startsWith("FIELD_OUT_OF_RANGE loads.csv:2: mass_kg"))
                .anyMatch(text -> text.startsWith("FIELD_UNREADABLE loads.csv:3: mass_lb"))
                .anyMatch(
                        text ->
                                text.startsWith("FIELD_OUT_OF_RANGE machine.yaml:16: seats")
                                        || text.startsWith(
                                                "FIELD_OUT_OF_RANGE machine.yaml:15: seats"))
                .anyMatch(text -> text.startsWith("FIELD_MISSING machine.yaml:1: start-fuel-kg"))
                .anyMatch(text -> text.startsWith("FIELD_OUT_OF_RANGE weather.csv:2: qnh_hpa"))
                .anyMatch(text -> text.startsWith("FIELD_UNREADABLE weather.csv:3: time"))
                .anyMatch(text -> text.startsWith("FIELD_OUT_OF_RANGE crews.yaml:4: people"))
                .anyMatch(text -> text.startsWith("FIELD_UNREADABLE crews.yaml:8: roles"))
                .anyMatch(text -> text.startsWith("FIELD_UNREADABLE rules.yaml:27: duty-hours"))
                .anyMatch(text -> text.startsWith("FIELD_UNREADABLE rules.yaml:12: hover-exit"))
                .anyMatch(text -> text.startsWith("FIELD_UNREADABLE zones.geojson:2: rule"))
                .anyMatch(text -> text.startsWith("FIELD_MISSING wires.geojson:2: highest_m"))
                .anyMatch(
                        text -> text.startsWith("FIELD_UNREADABLE release.geojson:3: coordinates"));
    }

    @Test
    void takes_no_override_of_a_limit_or_without_a_reason() {
        SampleJob sample =
                new SampleJob()
                        .with(
                                "job.yaml",
                                "rules: rules.yaml\n",
                                "rules: rules.yaml\noverrides: overrides.yaml\n");
        sample.files.put(
                "overrides.yaml",
                """
                version: 1
                overrides:
                  - {code: HOOK_LIMIT, subject: L01, reason: it will do, by: pilot, on: 2026-09-01}
                  - {code: GUY_GAPS, subject: L01, reason: it will do, by: pilot, on: 2026-09-01}
                  - {code: GUY_GAP, subject: L01, by: pilot, on: 2026-09-01}
                """);

        assertThat(faults(sample))
                .hasSize(3)
                .anyMatch(fault -> fault.contains("overrides.yaml:3: code: cannot be overridden"))
                .anyMatch(fault -> fault.contains("perhaps \"GUY_GAP\" is meant"))
                .anyMatch(fault -> fault.contains("overrides.yaml:5: reason"));
    }

    @Test
    void reads_who_answers_for_what() {
        SampleJob sample =
                new SampleJob()
                        .with(
                                "job.yaml",
                                "rules: rules.yaml\n",
                                "rules: rules.yaml\noverrides: overrides.yaml\n");
        sample.files.put(
                "overrides.yaml",
                """
                version: 1
                overrides:
                  - {code: GUY_GAP, subject: L01, reason: fourth guy, by: foreman, on: 2026-09-01}
                """);

        JobReading reading = sample.readIn(folder);

        assertThat(reading.faults()).isEmpty();
        assertThat(reading.job().orElseThrow().job().waivers())
                .singleElement()
                .satisfies(waiver -> assertThat(waiver.isLifting()).isTrue());
    }

    /** All faults of a zone's hours, and a rule that has none. */
    @Test
    void hours_of_a_zone_are_told_with_what_is_allowed() {
        assertThat(zoneFaults("no-overflight", "12.00", "25:00"))
                .anyMatch(text -> text.startsWith("FIELD_UNREADABLE zones.geojson:2: hours_from"))
                .anyMatch(text -> text.startsWith("FIELD_UNREADABLE zones.geojson:2: hours_until"));
        assertThat(zoneFaults("no-overflight", "12:00", "12:00"))
                .singleElement()
                .asString()
                .startsWith("FIELD_OUT_OF_RANGE zones.geojson:2: hours_until");
        assertThat(zoneFaults("no-fuel", "12:00", ""))
                .singleElement()
                .asString()
                .startsWith("FIELD_OUT_OF_RANGE zones.geojson:2: hours_from");
        assertThat(zoneFaults("no-overflight", "12:00", "13:30")).isEmpty();
    }

    private List<String> zoneFaults(String rule, String from, String until) {
        String hours =
                "\"rule\": \"%s\", \"hours_from\": \"%s\", \"hours_until\": \"%s\", "
                        .formatted(rule, from, until);
        return faults(new SampleJob().with("zones.geojson", "\"rule\": \"no-fuel\", ", hours));
    }
}
