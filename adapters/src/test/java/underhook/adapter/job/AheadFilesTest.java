package underhook.adapter.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.app.port.Fault;
import underhook.app.port.JobReading;
import underhook.app.port.ReadJob;
import underhook.core.ahead.Ahead;
import underhook.core.ahead.Answer;
import underhook.core.ahead.Answer.Mark;
import underhook.core.ahead.Answer.Point;
import underhook.core.ahead.Answer.Topic;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.geo.GeoPoint;

/** What the job states beside its plan, from the file to the answer. Distances are worked by hand. */
class AheadFilesTest {
    @TempDir Path folder;

    private JobReading read(String role, String name, String text) {
        return new SampleJob()
                .with("job.yaml", "map: map.geojson\n", "map: map.geojson\n" + role + "\n")
                .file(name, text)
                .readIn(folder);
    }

    private static Answer answer(ReadJob job, Topic topic) {
        return Ahead.of(job.job(), job.ground(), job.beside(), Optional.empty()).stream()
                .filter(one -> one.topic() == topic)
                .findFirst()
                .orElseThrow();
    }

    private static Point point(Answer answer, String subject) {
        return answer.points().stream()
                .filter(one -> one.subject().equals(subject))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void a_job_that_names_no_such_file_is_read_as_ever_and_says_so() {
        ReadJob job = new SampleJob().readIn(folder).job().orElseThrow();

        Answer notices = answer(job, Topic.NOTICES);

        assertThat(notices.isStated()).isFalse();
        assertThat(notices.points()).extracting(Point::mark).containsExactly(Mark.NOTED);
    }

    /** Whole minutes north of the work; a minute is a nautical mile, 1852 m, to 0.6 %. */
    private static String notice(String number, GeoPoint origin, int minutesNorth, String more) {
        double minutes = origin.latDeg() * 60 + minutesNorth;
        int north = (int) Math.round(minutes);
        int west = (int) Math.round(-origin.lonDeg() * 60);
        return String.format(
                Locale.ROOT,
                "(%s NOTAMN\nQ)XXXX/QOBCE/IV/M/AE/000/050/%02d%02dN%03d%02dW001\nA)XXXX %s)\n\n",
                number,
                north / 60,
                north % 60,
                west / 60,
                west % 60,
                more);
    }

    @Test
    void notices_are_sorted_by_nearness_and_told_for_the_hours_of_the_day() {
        GeoPoint origin = new SampleJob().readIn(folder).job().orElseThrow().job().origin();
        String now = "B)2609080600 C)2609081800 E)CRANE";
        String text =
                notice("A0003/26", origin, 300, now)
                        + notice("A0002/26", origin, 20, now)
                        + notice("A0001/26", origin, 0, now)
                        + notice("A0004/26", origin, 0, "B)2609090600 C)2609091800 E)CRANE")
                        + "!NO SUCH THING\n";

        JobReading reading = read("notices: notices.txt", "notices.txt", text);
        Answer answer = answer(reading.job().orElseThrow(), Topic.NOTICES);

        assertThat(reading.faults()).isEmpty();
        assertThat(answer.points())
                .extracting(Point::subject)
                .containsExactly("line 17", "A0001/26", "A0004/26", "A0002/26", "A0003/26");
        assertThat(answer.points())
                .extracting(Point::mark)
                .containsExactly(Mark.UNREAD, Mark.LOOK, Mark.NOTED, Mark.NOTED, Mark.NOTED);
        assertThat(point(answer, "A0001/26").sentences())
                .anyMatch(said -> said.startsWith("Its circle may reach "))
                .contains(
                        "In force in the day's hours: from 2026-09-08 06:00 until 2026-09-08 18:00 UTC.",
                        "It speaks of an obstacle or its light.");
        assertThat(point(answer, "A0004/26").sentences())
                .anyMatch(
                        said ->
                                said.startsWith(
                                        "Not in force in the day's hours: from 2026-09-09"));
        // 20 NM less 1 NM of radius less half a minute both ways, and places some hundred metres
        // off.
        assertThat(atLeastKm(point(answer, "A0002/26"))).isBetween(31.9, 35.2);
        // Beyond the local plane: 300 NM, 1 % and the day's extent taken off.
        assertThat(atLeastKm(point(answer, "A0003/26"))).isBetween(535.0, 556.0);
        assertThat(reading.job().orElseThrow().job().readingFindings())
                .extracting(Finding::code)
                .contains(FindingCode.NOTICE_UNREAD);
    }

    private static double atLeastKm(Point point) {
        String said =
                point.sentences().stream()
                        .filter(one -> one.endsWith(" km away or more."))
                        .findFirst()
                        .orElseThrow();
        return Double.parseDouble(said.replaceAll(".* is (\\S+) km away or more\\.", "$1"));
    }

    /** Two degrees of latitude are 222 km; the crane stands at the origin, to the minute. */
    @Test
    void a_notice_whose_text_names_a_place_here_is_near_wherever_its_circle_lies() {
        GeoPoint origin = new SampleJob().readIn(folder).job().orElseThrow().job().origin();
        String here = notice("A", origin, 0, "").replaceAll("(?s).*/(\\d{4}N\\d{5}W).*", "$1");
        String text =
                notice("A0001/26", origin, 120, "B)2609080600 C)2609081800 E)CRANE PSN " + here);

        Answer answer =
                answer(
                        read("notices: notices.txt", "notices.txt", text).job().orElseThrow(),
                        Topic.NOTICES);

        assertThat(point(answer, "A0001/26").mark()).isEqualTo(Mark.LOOK);
        assertThat(point(answer, "A0001/26").sentences())
                .anyMatch(said -> said.endsWith(" a position in its text is 0.0 km away or more."));
    }

    @Test
    void a_file_of_notices_that_is_no_text_is_a_fault() {
        List<Fault> faults = read("notices: notices.pdf", "notices.pdf", "%PDF").faults();

        assertThat(faults).extracting(Fault::value).contains("notices.pdf");
        assertThat(faults).extracting(Fault::allowed).contains(".txt");
    }

    private static final String CLIMATE =
            "climate: {file: climate.csv, reference-elevation-m: 0, lapse-c-per-100m: 0.65, source: invented}";

    /**
     * The table ends at 10 °C, and holds 2050 kg up to 500 m: 2050 less 1110, 95 and 34 leaves 811 kg for load and
     * fuel. By hand from the sample's own figures; 1013.25 hPa puts the pressure altitude at the place's own height
     * (ICAO standard atmosphere).
     */
    @Test
    void heaviest_pieces_against_fuel_from_the_air_of_the_month() {
        JobReading reading =
                read(
                        CLIMATE,
                        "climate.csv",
                        "month,oat_p50_c,oat_p90_c,qnh_low_hpa\n9,4,9,1013.25\n");
        Answer answer = answer(reading.job().orElseThrow(), Topic.FEASIBILITY);

        assertThat(reading.faults()).isEmpty();
        assertThat(answer.topic().caution()).contains("not clearance to fly");
        assertThat(point(answer, "D-1").sentences())
                .contains(
                        // A full tank of 340 kg leaves 471 kg, less a tenth 423.9 kg.
                        "Fuel of 340 kg leaves a piece at most 471 kg in half of the hours,"
                                + " at most 471 kg in nine of ten; for construction at most 423 kg.");
        assertThat(point(answer, "L03").mark()).isEqualTo(Mark.OK);
        // 200 kg estimated, 15 % more.
        assertThat(point(answer, "L03").sentences().get(0)).startsWith("It weighs 230 kg; ");
        assertThat(point(answer, "L04").sentences())
                .containsExactly("No mass is stated, so nothing is said.");
    }

    @Test
    void no_mass_is_made_up_outside_the_chart() {
        JobReading reading =
                read(
                        CLIMATE,
                        "climate.csv",
                        "month,oat_p50_c,oat_p90_c,qnh_low_hpa\n9,4,19,1013.25\n");
        Answer answer = answer(reading.job().orElseThrow(), Topic.FEASIBILITY);

        assertThat(answer.points()).isNotEmpty().allMatch(point -> point.mark() == Mark.NO);
        assertThat(answer.points().get(0).sentences().get(0))
                .startsWith("The hover table does not cover ");
    }

    @Test
    void a_piece_that_is_too_heavy_is_split_or_wants_a_larger_machine() {
        JobReading reading =
                new SampleJob()
                        .with(
                                "job.yaml",
                                "map: map.geojson\n",
                                "map: map.geojson\n" + CLIMATE + "\n")
                        .with("loads.csv", "L01,bag,A,S01,188", "L01,bag,A,S01,1500")
                        .file(
                                "climate.csv",
                                "month,oat_p50_c,oat_p90_c,qnh_low_hpa\n9,4,9,1013.25\n")
                        .readIn(folder);
        Answer answer = answer(reading.job().orElseThrow(), Topic.FEASIBILITY);

        assertThat(point(answer, "L01").mark()).isEqualTo(Mark.NO);
        // With the least fuel about 700 kg are left, 716 kg at the hook: three pieces.
        assertThat(point(answer, "L01").sentences())
                .contains("Split it: 3 pieces or more, or a larger machine.");
    }

    @Test
    void every_fault_of_the_climate_is_told_at_once() {
        List<Fault> faults =
                read(
                                CLIMATE.replace("reference-elevation-m: 0, ", ""),
                                "climate.csv",
                                """
                                month,oat_p50_c,oat_p90_c,qnh_low_hpa
                                9,14,9,1013
                                13,4,9,1013
                                10,4,900,1013
                                """)
                        .faults();

        assertThat(faults)
                .extracting(Fault::line, Fault::field, Fault::value)
                .contains(
                        tuple(2, "oat_p90_c", "9"),
                        tuple(3, "month", "13"),
                        tuple(4, "oat_p90_c", "900"));
        assertThat(faults).anyMatch(fault -> fault.toString().contains("reference-elevation"));
    }

    private static final String ARCHIVE =
            "archive: {file: archive.csv, hours-together: 10, source: invented}";

    /** Five Septembers hour by hour: ten knots on even days, thirty on odd ones; the bags' limit is 25 kt. */
    private static String fiveSeptembers() {
        StringBuilder rows = new StringBuilder("time,wind_kt,gust_kt\n");
        for (int year = 2021; year <= 2025; year++) {
            for (int day = 1; day <= 30; day++) {
                for (int hour = 0; hour < 24; hour++) {
                    rows.append(
                            String.format(
                                    Locale.ROOT,
                                    "%d-09-%02dT%02d:00-01:00,%d,\n",
                                    year,
                                    day,
                                    hour,
                                    day % 2 == 0 ? 10 : 30));
                }
            }
        }
        return rows.toString();
    }

    /**
     * Fifteen days of thirty in each of five years. The interval of one half of five by WILSON-1927 is 17.04 to
     * 82.96 %, by hand.
     */
    @Test
    void share_of_usable_days_with_the_seasons_that_stand_behind_it() {
        JobReading reading = read(ARCHIVE, "archive.csv", fiveSeptembers());
        Answer answer = answer(reading.job().orElseThrow(), Topic.STANDBY);

        assertThat(reading.faults()).isEmpty();
        assertThat(answer.topic().caution()).isEqualTo("History is not a forecast.");
        assertThat(point(answer, "September").sentences())
                .contains(
                        "Usable days, with at least 10 usable hours together: 50 %, 75 of 150 days in 5 seasons.",
                        "With so many seasons the true share may be anything between 17 and 83 % (95 in 100).",
                        "Of the lost hours wind stops 100 %, cloud 0 %, visibility 0 %.",
                        "For each day of work reckon with 2.0 days there on the mean.");
        assertThat(point(answer, "2021").sentences()).containsExactly("Usable days: 15 of 30.");
        assertThat(point(answer, "archive").sentences())
                .contains(
                        "Gaps: 0 hours of daylight, counted as not usable, and 0 whole days, not counted.",
                        "No least cloud base is stated: cloud is not counted.");
    }

    /** In September the sun of 46.8° north is up for about 12 hours: 6 to 17 are whole hours of it. */
    @Test
    void gaps_are_counted_and_are_not_usable() {
        String text = fiveSeptembers().replaceAll("2022-09-04T11:00-01:00.*\n", "");
        text = text.replaceAll("2023-09-06T.*\n", "");

        Answer answer =
                answer(read(ARCHIVE, "archive.csv", text).job().orElseThrow(), Topic.STANDBY);

        assertThat(point(answer, "2022").sentences()).containsExactly("Usable days: 14 of 30.");
        assertThat(point(answer, "2023").sentences()).containsExactly("Usable days: 14 of 29.");
        assertThat(point(answer, "archive").sentences())
                .anyMatch(said -> said.startsWith("Gaps: 1 hours of daylight, "))
                .anyMatch(said -> said.endsWith(" and 1 whole days, not counted."));
    }

    @Test
    void cloud_and_visibility_count_where_a_least_one_is_stated() {
        String head = "time,wind_kt,cloud_base_ft,visibility_m\n";
        StringBuilder rows = new StringBuilder(head);
        for (int hour = 6; hour < 17; hour++) {
            String cloud = hour == 6 ? "900" : hour == 7 ? "" : "2000";
            rows.append(
                    String.format(
                            Locale.ROOT,
                            "2021-09-10T%02d:30-01:00,5,%s,%d\n",
                            hour,
                            cloud,
                            hour == 8 ? 1000 : 9999));
        }
        Answer answer =
                answer(
                        read(
                                        ARCHIVE.replace(
                                                "10,",
                                                "8, least-cloud-base-ft: 1000, least-visibility-m: 5000,"),
                                        "archive.csv",
                                        rows.toString())
                                .job()
                                .orElseThrow(),
                        Topic.STANDBY);

        // Of eleven hours one is a gap; cloud at 6, sight at 8: eight are left together.
        assertThat(point(answer, "September").sentences())
                .contains(
                        "Usable days, with at least 8 usable hours together: 100 %, 1 of 1 days in 1 season.",
                        "Usable hours: 72 % of 11 hours of daylight.",
                        "Of the lost hours wind stops 0 %, cloud 50 %, visibility 50 %.");
    }

    /** One of two days is foggy, and fog has no base; of the third season only a night is known. */
    @Test
    void a_day_of_which_too_little_was_seen_is_no_usable_day_and_a_night_no_season() {
        StringBuilder rows = new StringBuilder("time,wind_kt,cloud_base_ft\n");
        for (String day : List.of("2021-09-10", "2021-09-11", "2022-09-10")) {
            for (int hour = 6; hour < 17; hour++) {
                rows.append(
                        String.format(
                                Locale.ROOT,
                                "%sT%02d:00-01:00,5,%s\n",
                                day,
                                hour,
                                day.endsWith("11") ? "" : "2000"));
            }
        }
        rows.append("2023-09-10T01:00-01:00,5,2000\n");
        Answer answer =
                answer(
                        read(
                                        ARCHIVE.replace("10,", "8, least-cloud-base-ft: 1000,"),
                                        "archive.csv",
                                        rows.toString())
                                .job()
                                .orElseThrow(),
                        Topic.STANDBY);

        assertThat(point(answer, "September").sentences())
                .contains(
                        "Usable days, with at least 8 usable hours together: 66 %, 2 of 3 days in 2 seasons.",
                        "Usable hours: 66 % of 33 hours of daylight.");
    }

    @Test
    void rows_that_are_of_no_past_year_are_faults() {
        List<Fault> faults =
                read(
                                ARCHIVE,
                                "archive.csv",
                                """
                                time,wind_kt
                                0001-09-08T06:00-01:00,5
                                2025-09-08T06:00-01:00,5
                                06:00,5
                                +200000-09-08T06:00-01:00,5
                                """)
                        .faults();

        assertThat(faults)
                .extracting(Fault::line, Fault::field)
                .containsExactly(tuple(2, "time"), tuple(4, "time"), tuple(5, "time"));
    }

    @Test
    void every_fault_of_the_archive_is_told_at_once() {
        List<Fault> faults =
                read(
                                ARCHIVE.replace("10,", "30,"),
                                "archive.csv",
                                """
                                time,wind_kt,gust_kt
                                2021-09-10T06:00-01:00,10,8
                                2021-09-10T05:00-01:00,10,
                                2021-09-10T05:00-01:00,10,
                                yesterday,10,
                                2021-09-10T08:00-01:00,999,
                                """)
                        .faults();

        assertThat(faults)
                .extracting(Fault::file, Fault::line, Fault::field, Fault::value)
                .contains(
                        tuple("archive.csv", 2, "gust_kt", "8"),
                        tuple("archive.csv", 4, "time", "2021-09-10T05:00-01:00"),
                        tuple("archive.csv", 5, "time", "yesterday"),
                        tuple("archive.csv", 6, "wind_kt", "999"));
        assertThat(faults).anyMatch(fault -> fault.toString().contains("hours-together"));
    }

    /** The laydown A lies at 260, -130; a road from west to east, so many metres north of it. */
    private ReadJob withRoad(int northM) {
        String road =
                String.format(
                        Locale.ROOT,
                        "{\"type\": \"FeatureCollection\", \"features\": [{\"type\": \"Feature\","
                                + " \"properties\": {\"id\": \"RV-9\", \"kind\": \"road\"}, \"geometry\":"
                                + " {\"type\": \"LineString\", \"coordinates\": [[-400, %d], [900, %d]]}}]}",
                        northM - 130,
                        northM - 130);
        JobReading reading =
                new SampleJob()
                        .with(
                                "job.yaml",
                                "map: map.geojson",
                                "map: {file: map.geojson, crs: \"EPSG:1\"}")
                        .file("map.geojson", road)
                        .readIn(folder);
        assertThat(reading.faults()).isEmpty();
        return reading.job().orElseThrow();
    }

    private static List<String> said(Answer answer, Mark mark) {
        return answer.points().stream()
                .filter(point -> point.mark() == mark)
                .flatMap(point -> point.sentences().stream())
                .toList();
    }

    /**
     * The wind is from 220° in both hours, and the place may be off by 2 m. S01 is 120 m east and 250 m north of A: the
     * way crosses the road after 100 m north, that is 111 m. By hand; 100 ft from WAC-296-32.
     */
    @Test
    void a_laydown_with_its_road_behind_it_is_laid_out_well() {
        Answer answer = answer(withRoad(100), Topic.LAYDOWNS);

        assertThat(said(answer, Mark.OK))
                .contains(
                        "Into the wind, 30° to both sides, nothing of roads, houses, people, masts and wires is"
                                + " within 150 m.",
                        "Nearest of roads, trails, houses and people: RV-9 is 98 m away; people keep at least 31"
                                + " m from the rotor.",
                        "For vehicles: RV-9 is 98 m away.",
                        "Ways out over 150 m: 36 of 36 headings are free, the widest opening has 360°.");
        assertThat(said(answer, Mark.LOOK))
                .contains("Ways with a load within 150 m pass over: RV-9; loads: L01, L03.");
        assertThat(said(answer, Mark.NO)).containsExactly("No fuel is kept at any place.");
    }

    /** 200 m north less 2 m that the place may be off; all four loads go beyond it. By hand. */
    @Test
    void a_road_farther_out_on_the_ways_is_told_though_no_load_crosses_it_near_by() {
        Answer answer = answer(withRoad(200), Topic.LAYDOWNS);

        assertThat(said(answer, Mark.LOOK))
                .contains(
                        "No way with a load passes over roads, trails, railways, houses or people within"
                                + " 150 m; farther out 4 of 4 do, these at the nearest: RV-9 (198 m).");
    }

    @Test
    void a_road_into_the_wind_and_near_the_rotor_is_refused() {
        Answer answer = answer(withRoad(-20), Topic.LAYDOWNS);

        assertThat(said(answer, Mark.NO))
                .contains(
                        "Into the wind, 30° to both sides, RV-9 is 18 m away, in 2 of 2 hours.",
                        "Nearest of roads, trails, houses and people: RV-9 is 18 m away; people keep at least 31"
                                + " m from the rotor.");
        assertThat(said(answer, Mark.OK))
                .contains(
                        "No way with a load passes over roads, trails, railways, houses or people within"
                                + " 150 m.");
    }

    private static final String PERMITS_HEAD =
            "subject,activity,ruling,season_from,season_until,hours_from,hours_until,letter,granted\n";

    /** The duty is from 05:45 to 17:45 on 8 September. */
    @Test
    void letters_are_held_against_what_the_day_does() {
        JobReading reading =
                read(
                        "permits: permits.csv",
                        "permits.csv",
                        PERMITS_HEAD
                                + "*,landing,needs-permit,,,,,act 1,permit 7\n"
                                + "*,hover,allowed,,,07:00,20:00,act 2,\n"
                                + "*,unloading,allowed,,,,,act 3,\n"
                                + "*,unloading,needs-permit,11-01,09-30,,,act 4,\n"
                                + "*,low-flight,forbidden,04-01,07-31,,,act 5,\n"
                                + "A,landing,forbidden,,,18:00,23:00,act 6,\n"
                                + "S02,hover,forbidden,,,16:00,23:00,act 7,\n");
        Answer answer = answer(reading.job().orElseThrow(), Topic.PERMITS);

        assertThat(reading.faults()).isEmpty();
        assertThat(answer.topic().caution()).isEqualTo("Local law decides.");
        assertThat(said(answer, Mark.OK))
                .containsExactly(
                        "Landing here: A, H.", "Needs a permit: permit 7 is at hand, says act 1.");
        assertThat(said(answer, Mark.NO))
                .containsExactly(
                        "Unloading here: S01, S02.",
                        "Needs a permit: none is stated, says act 4.",
                        "Allowed, says act 3.",
                        "Hovering here: S02.",
                        "Forbidden from 16:00 to 23:00, says act 7.",
                        "For some hours of the duty no letter holds.");
        assertThat(said(answer, Mark.LOOK))
                .contains(
                        "Hovering here: A, S01, S02.",
                        "Allowed from 07:00 to 20:00, says act 2.",
                        "For some hours of the duty no letter holds.",
                        "No letter holds on this day: ask whose land it is.");
    }

    @Test
    void every_fault_of_the_permits_is_told_at_once() {
        List<Fault> faults =
                read(
                                "permits: permits.csv",
                                "permits.csv",
                                PERMITS_HEAD
                                        + "Z9,landing,allowed,,,,,act,\n"
                                        + "*,jumping,allowed,13-40,,,,act,\n"
                                        + "*,hover,allowed,,,20:00,06:00,,\n")
                        .faults();

        assertThat(faults)
                .extracting(Fault::line, Fault::field, Fault::value)
                .contains(
                        tuple(2, "subject", "Z9"),
                        tuple(3, "activity", "jumping"),
                        tuple(3, "season_from", "13-40"));
        assertThat(faults).anyMatch(fault -> fault.line() == 4 && fault.field().equals("letter"));
    }
}
