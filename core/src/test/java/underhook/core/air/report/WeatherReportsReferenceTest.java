package underhook.core.air.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Outcome;
import underhook.core.unit.Units;

/**
 * Reports with their decoding as published.
 *
 * <p>WMO: examples of ICAO Annex 3 appendices 3 and 5 with their IWXXM decoding (github
 * wmo-im/iwxxm, commit 2c4db03d). AIM: FAA Aeronautical Information Manual, section 7-1, figure 7-1
 * and the METAR section. FMH-1: Federal Meteorological Handbook No. 1, coding of remarks.
 */
class WeatherReportsReferenceTest {
    private static List<String> fields(String text) {
        return WeatherReports.parse(text).getValue().fields().stream()
                .map(field -> field.name() + "=" + field.value())
                .toList();
    }

    /** WMO, METAR YUDO. */
    @Test
    void decodes_a_metar_with_two_trends() {
        String text =
                "METAR YUDO 221630Z 24004MPS 0600 R12/1000U DZ FG SCT010 OVC020 17/16 Q1018"
                        + " BECMG TL1700 0800 FG BECMG AT1800 9999 NSW";

        WeatherReport report = WeatherReports.parse(text).getValue();

        assertThat(report.issued()).containsExactly(new DayTime(22, 16, 30));
        // The report gives whole units, so the decoding is exact.
        assertThat(report.conditions().findWindMPerS().getAsDouble()).isEqualTo(4.0);
        assertThat(report.conditions().findGustMPerS()).isEmpty();
        assertThat(report.conditions().findQnhPa().getAsDouble()).isEqualTo(101_800.0);
        assertThat(report.unparsed()).isEmpty();
        assertThat(report.raw()).isEqualTo(text);
        assertThat(fields(text))
                .contains(
                        "station=YUDO",
                        "windFromTrueDeg=240",
                        "windMPerS=4.0",
                        "visibilityM=600",
                        "runway12VisualM=1000",
                        "runway12Tendency=upward",
                        "weather=DZ",
                        "weather=FG",
                        "cloud=SCT 1000 ft",
                        "cloud=OVC 2000 ft",
                        "temperatureC=17",
                        "dewpointC=16",
                        "qnhHpa=1018",
                        "qnhInHg=30.06",
                        "part1.change=BECMG",
                        "part1.until=17:00Z",
                        "part1.visibilityM=800",
                        "part1.weather=FG",
                        "part2.at=18:00Z",
                        "part2.visibilityM=10000",
                        "part2.visibilityBound=above",
                        "part2.weather=NSW");
    }

    /** WMO, TAF YUDO. */
    @Test
    void decodes_a_forecast_with_change_periods() {
        String text =
                "TAF YUDO 151800Z 1600/1618 13005MPS 9000 BKN020 BECMG 1606/1608 SCT015CB BKN020"
                        + " TEMPO 1608/1612 17006G12MPS 1000 TSRA SCT010CB BKN020"
                        + " FM161230 15004MPS 9999 BKN020";

        WeatherReport report = WeatherReports.parse(text).getValue();

        assertThat(report.kind()).isEqualTo(WeatherReport.Kind.TAF);
        assertThat(report.valid()).containsExactly(new DayTime(16, 0, 0), new DayTime(16, 18, 0));
        assertThat(report.unparsed()).isEmpty();
        assertThat(report.parts())
                .extracting(ReportPart::change)
                .containsExactly("BECMG", "TEMPO", "FM");
        assertThat(report.parts().get(1).during())
                .containsExactly(new DayTime(16, 8, 0), new DayTime(16, 12, 0));
        assertThat(report.parts().get(2).during()).containsExactly(new DayTime(16, 12, 30));
        assertThat(report.parts().get(1).conditions().findGustMPerS().getAsDouble())
                .isEqualTo(12.0);
        assertThat(fields(text))
                .contains(
                        "windMPerS=5.0",
                        "visibilityM=9000",
                        "cloud=BKN 2000 ft",
                        "part1.cloud=SCT 1500 ft CB",
                        "part2.weather=TSRA",
                        "part2.visibilityM=1000",
                        "part3.windFromTrueDeg=150",
                        "part3.visibilityBound=above");
    }

    /** AIM figure 7-1, METAR KPIT; 0.75 statute miles are 1207.008 m by definition. */
    @Test
    void decodes_miles_feet_and_precise_temperatures() {
        String text =
                "METAR KPIT 091955Z COR 22015G25KT 3/4SM R28L/2600FT TSRA OVC010CB 18/16 A2992"
                        + " RMK SLP045 T01820159";

        WeatherReport report = WeatherReports.parse(text).getValue();

        assertThat(report.unparsed()).isEmpty();
        assertThat(report.conditions().findVisibilityM().getAsDouble())
                .isCloseTo(1207.008, within(1e-6));
        assertThat(fields(text))
                .contains(
                        "mark=COR",
                        "windKt=15.0",
                        "gustKt=25.0",
                        "visibilityMi=0.75",
                        "runway28LVisualFt=2600",
                        "weather=TSRA",
                        "cloud=OVC 1000 ft CB",
                        "qnhHpa=1013.2",
                        "qnhInHg=29.92",
                        "seaLevelPressureHpa=1004.5",
                        "temperaturePreciseC=18.2",
                        "dewpointPreciseC=15.9");
    }

    /** AIM figure 7-1, TAF KPIT. */
    @Test
    void decodes_a_forecast_with_shear_and_probability() {
        String text =
                "TAF KPIT 091730Z 0918/1024 15005KT 5SM HZ FEW020 WS010/31022KT FM091930"
                        + " 30015G25KT 3SM SHRA OVC015 TEMPO 0920/0922 1/2SM +TSRA OVC008CB"
                        + " FM100100 27008KT 5SM SHRA BKN020 OVC040 PROB30 1004/1007 1SM -RA BR"
                        + " FM101015 18005KT 6SM -SHRA OVC020 BECMG 1013/1015 P6SM NSW SKC";

        WeatherReport report = WeatherReports.parse(text).getValue();

        assertThat(report.unparsed()).isEmpty();
        assertThat(report.valid()).containsExactly(new DayTime(9, 18, 0), new DayTime(10, 24, 0));
        assertThat(report.parts())
                .extracting(ReportPart::change)
                .containsExactly("FM", "TEMPO", "FM", "PROB30", "FM", "BECMG");
        assertThat(fields(text))
                .contains(
                        "windShearToFt=1000",
                        "windShearFromTrueDeg=310",
                        "windShearKt=22",
                        "part2.visibilityMi=0.5",
                        "part2.weather=+TSRA",
                        "part4.weather=-RA",
                        "part6.visibilityMi=6",
                        "part6.visibilityBound=above",
                        "part6.cloud=SKC");
    }

    /** AIM, METAR section, wind. */
    @Test
    void decodes_winds() {
        assertThat(fields("13008KT")).contains("windFromTrueDeg=130", "windKt=8.0");
        assertThat(fields("08032G45KT"))
                .contains("windFromTrueDeg=80", "windKt=32.0", "gustKt=45.0");
        assertThat(fields("VRB04KT"))
                .contains("wind=variable", "windKt=4.0")
                .noneMatch(field -> field.startsWith("windFrom"));
        assertThat(fields("00000KT"))
                .contains("wind=calm", "windKt=0.0")
                .noneMatch(field -> field.startsWith("windFrom"));
        assertThat(fields("32012G22KT 280V350"))
                .contains("windVaryingFromDeg=280", "windVaryingToDeg=350", "gustKt=22.0");
    }

    /** AIM, METAR section, visibility; metres rounded by hand from 1609.344 m to the mile. */
    @Test
    void decodes_miles() {
        assertThat(fields("7SM")).contains("visibilityM=11265");
        assertThat(fields("15SM")).contains("visibilityM=24140");
        assertThat(fields("1/2SM")).contains("visibilityM=805");
        assertThat(fields("1 1/2SM")).contains("visibilityMi=1.5", "visibilityM=2414");
    }

    /** FMH-1 coding of remarks. */
    @Test
    void decodes_remarks() {
        String head = "KXXX 170322Z RMK ";
        assertThat(fields(head + "SLP982")).contains("seaLevelPressureHpa=998.2");
        assertThat(fields(head + "SLP045")).contains("seaLevelPressureHpa=1004.5");
        assertThat(fields(head + "SLP117")).contains("seaLevelPressureHpa=1011.7");
        assertThat(fields(head + "SLPNO")).noneMatch(f -> f.startsWith("seaLevel"));
        assertThat(fields(head + "T01561022"))
                .contains("temperaturePreciseC=15.6", "dewpointPreciseC=-2.2");
        assertThat(fields(head + "T10171022"))
                .contains("temperaturePreciseC=-1.7", "dewpointPreciseC=-2.2");
    }

    /** Open sample of a METAR without temperatures, dixwx.com. */
    @Test
    void leaves_out_a_temperature_that_is_not_there() {
        String text = "KGTF 170322Z 33014KT 1 3/4SM -SN BR OVC005 A2991 RMK AO2 RAE17SNB17 P0004";

        WeatherReport report = WeatherReports.parse(text).getValue();

        assertThat(report.unparsed()).isEmpty();
        assertThat(report.conditions().findTemperatureK()).isEmpty();
        assertThat(fields(text))
                .contains(
                        "visibilityMi=1.75",
                        "weather=-SN",
                        "weather=BR",
                        "cloud=OVC 500 ft",
                        "qnhInHg=29.91",
                        "precipitationIn=0.04",
                        "remarks=AO2 RAE17SNB17 P0004");
    }

    /** Open sample, vignette of the pmetar package. */
    @Test
    void decodes_a_metar_without_its_name() {
        assertThat(fields("EPWA 251800Z 28010KT 9999 BKN005 10/09 Q0999 TEMPO BKN004"))
                .contains(
                        "windFromTrueDeg=280",
                        "visibilityBound=above",
                        "cloud=BKN 500 ft",
                        "temperatureC=10",
                        "dewpointC=9",
                        "qnhHpa=999",
                        "part1.change=TEMPO",
                        "part1.cloud=BKN 400 ft");
    }

    /** Slashes stand for what is missing (ICAO Annex 3); never a zero. */
    @Test
    void never_reads_a_missing_group_as_zero() {
        WeatherReport report =
                WeatherReports.parse("METAR XXXX //////KT //// // ////// ///// Q////").getValue();

        assertThat(report.conditions().fields()).isEmpty();
        assertThat(report.conditions().findQnhPa()).isEmpty();
        assertThat(report.conditions().findTemperatureK()).isEmpty();
        assertThat(report.conditions().findWindMPerS()).isEmpty();
        assertThat(report.unparsed()).isEmpty();
    }

    @Test
    void goes_on_behind_a_group_that_nobody_knows() {
        WeatherReport report =
                WeatherReports.parse("METAR YUDO 221630Z 24004MPS 06?? Q1018").getValue();

        assertThat(report.unparsed()).containsExactly("06??");
        // Exact: the group states whole hectopascals.
        assertThat(report.conditions().findQnhPa().getAsDouble()).isEqualTo(Units.hpaToPa(1018));
        assertThat(report.raw()).contains("06??");
    }

    /** Air is at least as warm as its dewpoint, and a gust is a peak of the wind: by definition of both. */
    @Test
    void says_what_cannot_be_and_decodes_it_all_the_same() {
        Outcome<WeatherReport> outcome =
                WeatherReports.parse("METAR LOXX 251520Z 24025G12KT 9999 M02/15 Q1013");

        assertThat(outcome.findings())
                .extracting(one -> one.code() + " " + one.value() + " " + one.limit())
                .containsExactly("REPORT_UNREADABLE 12 25", "REPORT_UNREADABLE 15 -2");
        assertThat(outcome.findings().get(1).message()).contains("\"M02/15\"");
        assertThat(outcome.getValue().fields())
                .contains(new ReportField("dewpointC", "15"), new ReportField("gustKt", "12.0"));
    }

    @Test
    void doubts_tenths_and_trends_too_but_nothing_that_can_be() {
        assertThat(
                        WeatherReports.parse("METAR LOXX 251520Z 24010KT 12/12 Q1013 RMK T01170119")
                                .findings())
                .hasSize(1);
        assertThat(
                        WeatherReports.parse(
                                        "TAF LOXX 251100Z 2512/2612 24010KT TEMPO 2514/2516 24030G20KT")
                                .findings())
                .hasSize(1);
        for (String possible :
                List.of(
                        "METAR LOXX 251520Z 24010G10KT 12/12 Q1013",
                        "METAR LOXX 251520Z 24010G//KT M00/00 Q1013",
                        "METAR LOXX 251520Z 24010G25KT 12/// Q1013 RMK T0116",
                        "METAR LOXX 251520Z //// ///12 Q1013")) {
            assertThat(WeatherReports.parse(possible).findings()).as(possible).isEmpty();
        }
    }

    @Test
    void refuses_what_is_no_report() {
        assertThat(WeatherReports.parse("hello there").findings())
                .extracting(finding -> finding.code())
                .containsExactly(FindingCode.REPORT_UNREADABLE);
        assertThat(WeatherReports.parse("").isDone()).isFalse();
    }
}
