package underhook.app.calc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.OffsetDateTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import underhook.app.port.ReferenceSystem;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Outcome;
import underhook.core.finding.Severity;
import underhook.core.geo.GeoPoint;

class CalcTest {
    /** Degrees, and the same moved by one: enough to see which way a point goes. */
    private record Shifted(String name, double by) implements ReferenceSystem {
        @Override
        public boolean isGeographic() {
            return true;
        }

        @Override
        public double metresPerUnit() {
            return 1;
        }

        @Override
        public GeoPoint toGeo(double x, double y) {
            return new GeoPoint(y - by, x - by);
        }

        @Override
        public Xy fromGeo(GeoPoint point) {
            return new Xy(point.lonDeg() + by, point.latDeg() + by);
        }
    }

    private final Calc calc =
            new Calc(
                    code ->
                            code.equals("4326")
                                    ? Outcome.done(new Shifted("EPSG:4326", 0))
                                    : code.equals("1")
                                            ? Outcome.done(new Shifted("EPSG:1", 1))
                                            : Outcome.refused(
                                                    Finding.of(
                                                            FindingCode.REFERENCE_SYSTEM_UNKNOWN,
                                                            Severity.STOP,
                                                            code,
                                                            "",
                                                            "unknown")),
                    text -> Outcome.done(Map.of("raw", text)));

    /** Values from docs/references.md keys named in the last column, tolerance half the last digit. */
    @ParameterizedTest(name = "{0} {1} gives {2}")
    @CsvSource(
            delimiter = '|',
            value = {
                "isa | altitude-m=1000 | temperatureK | 281.650 | 0.0005 | ICAO-7488",
                "isa | altitude-m=1000 | pressureHpa | 898.746 | 0.009 | ICAO-7488",
                "isa | altitude-m=1000 | densityKgPerM3 | 1.11164 | 0.00001 | ICAO-7488",
                "isa | altitude-m=1000 | densityRatio | 0.90746 | 0.00001 | ICAO-7488",
                "isa | altitude-m=1000 | soundMPerS | 336.434 | 0.0006 | ICAO-7488",
                "air | elevation-m=1500 qnh-hpa=1020 oat-c=10 | pressureAltitudeM | 1444.0 | 0.06 | ICAO-7488",
                "air | elevation-m=1500 qnh-hpa=1020 oat-c=10 | pressureAltitudeFt | 4737 | 0.6 | ICAO-7488",
                "air | elevation-m=1500 qnh-hpa=1020 oat-c=10 | stationPressureHpa | 851.39 | 0.006 | ICAO-7488",
                "air | elevation-m=0 qnh-hpa=1013.25 oat-c=30 | densityAltitudeFt | 1724 | 0.6 | ICAO-7488",
                "air | elevation-m=0 qnh-hpa=1013.25 oat-c=30 | isaDeviationK | 15 | 1e-9 | ICAO-7488",
                "air | elevation-m=0 qnh-hpa=1013.25 oat-c=30 dewpoint-c=20 | densityKgPerM3 | 1.15425 | 0.00001 | NWS-VAPOUR",
                "air | elevation-m=0 qnh-hpa=1013.25 oat-c=30 dewpoint-c=20 | densityAltitudeM | 615.4 | 0.1 | NWS-VAPOUR",
                "air | elevation-m=790 qnh-hpa=1018 oat-c=16 | pressureAltitudeM | 750.5 | 0.5 | by hand 790 - 4.75 hPa at 27.3 ft",
                "air | elevation-m=790 qnh-hpa=1015 oat-c=23 | densityAltitudeM | 1234 | 5 | by hand",
                "wind | track-deg=180 from-deg=220 speed-kt=30 | headKt | 22.98 | 0.006 | FAA-KNOWLEDGE-TEST",
                "wind | track-deg=250 from-deg=210 speed-kt=25 | crossKt | -16.07 | 0.006 | by hand",
                "wind | track-deg=90 from-deg=45 speed-kt=40 tas-kt=120 | groundSpeedKt | 88.33 | 0.006 | FAA-PHAK",
                "wind | track-deg=90 from-deg=45 speed-kt=40 tas-kt=120 | correctionDeg | -13.63 | 0.006 | FAA-PHAK",
                "hover | mass-kg=2250 rotor-radius-m=5.345 density-kgm3=1.225 | inducedMPerS | 10.017 | 0.0006 | LEISHMAN-2006",
                "hover | mass-kg=2250 rotor-radius-m=5.345 density-kgm3=1.225 | idealPowerKw | 221.03 | 0.02 | LEISHMAN-2006",
                "hover | mass-kg=2050 rotor-radius-m=5.1 density-kgm3=1.1479 | farWakeMPerS | 20.7 | 0.1 | by hand 400 m and 20 C",
                "legs | mass-kg=250 legs=2 angle-deg=60 | factor | 1.1547 | 0.0001 | LOAD-ANGLE",
                "legs | mass-kg=250 legs=2 angle-deg=60 | legTensionN | 1415.5 | 0.1 | by hand 2451.66/(2 sin 60)",
                "legs | mass-kg=250 legs=4 angle-deg=60 rigid=true | legTensionN | 1415.5 | 0.1 | two of four",
                "legs | mass-kg=250 legs=4 angle-deg=60 rigid=true | factor | 1.1547 | 0.0001 | LOAD-ANGLE",
                "legs | mass-kg=250 legs=4 angle-deg=60 rigid=true | weightPerLegN | 1225.83 | 0.01 | by hand 2451.66/2",
                "legs | mass-kg=250 legs=4 angle-deg=60 | weightPerLegN | 612.92 | 0.01 | by hand 2451.66/4",
                "bridle | mass-kg=300 d1-m=4 d2-m=2.5 height-m=3 | tension1N | 1886 | 3 | LOAD-ANGLE-UNEQUAL",
                "bridle | mass-kg=300 d1-m=4 d2-m=2.5 height-m=3 | tension2N | 2357 | 3 | LOAD-ANGLE-UNEQUAL",
                "bridle | mass-kg=300 d1-m=4 d2-m=2.5 height-m=3 | length1M | 5 | 1e-9 | LOAD-ANGLE-UNEQUAL",
                "bridle | mass-kg=300 d1-m=4 d2-m=2.5 height-m=3 | length2M | 3.905 | 0.0006 | LOAD-ANGLE-UNEQUAL",
                "trail | mass-kg=100 drag-area-m2=1.28 airspeed-kt=60 density-kgm3=1.225 | trailAngleDeg | 37.30 | 0.037 | NASA-GLENN-SHAPE",
                "trail | mass-kg=100 drag-area-m2=1.28 airspeed-kt=60 density-kgm3=1.225 | lineTensionN | 1232.7 | 1.2 | NASA-GLENN-SHAPE",
                "swing | length-m=15 | periodS | 7.8 | 0.05 | by hand",
                "swing | length-m=25 | periodS | 10.0 | 0.05 | by hand",
                "swing | length-m=40 | periodS | 12.7 | 0.05 | by hand",
                "swing | length-m=10 amplitude-deg=90 | periodS | 7.4890 | 0.0005 | 6.3448 times 1.180341",
                "swing | length-m=20 mass-kg=500 machine-kg=2000 | freePeriodS | 8.026 | 0.001 | E-PE-06",
                "trail | mass-kg=100 drag-area-m2=1.28 airspeed-kt=60 density-kgm3=1.225 line-m=30 | hookTensionN | 1232.7 | 1.2 | NASA-GLENN-SHAPE",
                "trail | mass-kg=100 drag-area-m2=0 airspeed-kt=0 density-kgm3=1.225 line-m=30 line-kg=20 line-mm=16 | hookTensionN | 1176.8 | 0.1 | by hand 120 g",
                "legs | mass-kg=250 legs=4 angle-deg=60 rigid=true leg-limit-kg=500 | limitKg | 866.0 | 0.1 | by hand 500 2 sin 60",
                "bridle | mass-kg=400 d1-m=1.5 d2-m=2.5 height-m=2 leg1-m=3 leg2-m=3 | tiltDeg | 12.604 | 0.001 | by hand atan(0.5/2.2361)",
                "hover | mass-kg=2250 rotor-radius-m=5.345 density-kgm3=1.225 below-m=500 | downMPerS | 20.03 | 0.01 | LEISHMAN-2006",
                "hover | mass-kg=2250 rotor-radius-m=5.345 density-kgm3=1.225 | keepOffM | 32.1 | 0.05 | FAA-AIM",
                "hover | mass-kg=2250 rotor-radius-m=5.345 density-kgm3=1.225 descent-ft-per-min=400 | vortexFromFtPerMin | 887 | 2 | JOHNSON-2005",
                "fall | height-m=50 speed-kt=0 | timeS | 3.1933 | 0.0001 | by hand",
                "fall | height-m=50 speed-kt=0 | impactMPerS | 31.316 | 0.001 | by hand",
                "fall | height-m=100 speed-kt=38.876889848812095 mass-kg=100 drag-area-m2=1.0006785714285714 density-kgm3=1.225 | throwM | 73.312 | 0.001 | SciPy",
                "fall | height-m=100 speed-kt=0 mass-kg=100 drag-area-m2=1.0006785714285714 density-kgm3=1.225 tailwind-kt=19.438444924406048 | throwM | 11.281 | 0.001 | SciPy",
                "sag | span-m=100 height-diff-m=0 weight-n-per-m=1.96 tension-n=3500.2 | sagM | 0.7 | 0.0001 | by hand",
                "sag | span-m=120 height-diff-m=8 weight-n-per-m=5.88399 tension-n=3000 | sagM | 3.542 | 0.001 | 516 - 512.458",
                "sag | span-m=100 height-diff-m=60 weight-n-per-m=10 tension-n=10000 | lowestAtM | -518.6 | 0.1 | by hand",
                "guy | pole-mass-kg=380 pole-length-m=12 attach-m=9 guy-angle-deg=45 lean-deg=5 | tensionN | 337 | 0.6 | by hand",
                "guy | pole-mass-kg=380 pole-length-m=12 attach-m=9 guy-angle-deg=45 lean-deg=20 | tensionN | 2011 | 0.6 | by hand",
                "guy | pole-mass-kg=500 pole-length-m=12 cg-m=5.4 attach-m=9 guy-angle-deg=56.309932 lean-deg=3 | tensionN | 301.6 | 0.9 | by hand",
                "guys | azimuths-deg=0,120,240 | largestGapDeg | 120 | 1e-9 | by hand",
                "guys | azimuths-deg=0,120,240 | worstFactor | 1.1547 | 0.0001 | by hand",
                "guys | azimuths-deg=20,150,195 | largestGapDeg | 185 | 1e-9 | by hand",
                "sun | lat-deg=39.742476 lon-deg=-105.1786 at=2003-10-17T12:30:30-07:00 | azimuthDeg | 194.34024 | 0.015 | NREL-SPA",
                "sun | lat-deg=39.742476 lon-deg=-105.1786 at=2003-10-17T12:30:30-07:00 | elevationDeg | 39.88838 | 0.02 | NREL-SPA"
            })
    void gives_the_value_of_the_source(
            String topic,
            String flags,
            String key,
            double expected,
            double tolerance,
            String source) {
        Object value = run(topic, flags).getValue().get(key);

        assertThat((Double) value).as(source).isCloseTo(expected, within(tolerance));
    }

    /** By hand: legs at atan(1/9) = 6.3° and 45°, at 30.0° each, and hung at acos(0.4/0.45) = 27.27°. */
    @Test
    void a_bridle_with_a_flat_leg_is_worked_out_and_cautioned() {
        assertThat(run("bridle", "mass-kg=300 d1-m=9 d2-m=1 height-m=1").findings())
                .extracting(f -> f.code() + " " + f.severity() + " " + f.value() + " " + f.limit())
                .containsExactly("BRIDLE_TILT CAUTION 6.3 30");
        assertThat(run("bridle", "mass-kg=300 d1-m=0.8660 d2-m=0.5 height-m=0.5").findings())
                .isEmpty();
        assertThat(
                        run(
                                        "bridle",
                                        "mass-kg=300 d1-m=0.4 d2-m=0.4 height-m=1 leg1-m=0.45 leg2-m=0.45")
                                .findings())
                .extracting(Finding::value)
                .containsExactly("27.2");
    }

    @Test
    void every_answer_says_how_it_was_found() {
        Object how = run("swing", "length-m=15").getValue().get("how");

        assertThat(how)
                .isEqualTo(
                        List.of(
                                Map.of(
                                        "formula",
                                        "T = 2 pi sqrt(L/g)/agm(1, cos(amplitude/2))",
                                        "source",
                                        "DERIVED")));
    }

    @Test
    void keys_come_in_the_stated_order() {
        assertThat(run("wind", "track-deg=0 from-deg=0 speed-kt=5 tas-kt=50").getValue().keySet())
                .containsExactly("headKt", "crossKt", "groundSpeedKt", "correctionDeg", "how");
        assertThat(run("wind", "track-deg=0 from-deg=0 speed-kt=5").getValue())
                .doesNotContainKey("groundSpeedKt");
    }

    @Test
    void a_track_that_cannot_be_held_is_refused() {
        assertThat(codes(run("wind", "track-deg=0 from-deg=90 speed-kt=50 tas-kt=40")))
                .containsExactly(FindingCode.TRACK_NOT_HELD);
    }

    /** Contract, section 4: angles in degrees and speeds in knots, because a person types them. */
    @Test
    void a_refusal_speaks_in_the_units_that_were_typed() {
        assertThat(run("wind", "track-deg=0 from-deg=90 speed-kt=50 tas-kt=40").findings())
                .singleElement()
                .satisfies(
                        said ->
                                assertThat(List.of(said.value(), said.limit(), said.unit()))
                                        .containsExactly("50.0", "40.0", "kt"));
        assertThat(run("air", "elevation-m=0 qnh-hpa=1013 oat-c=10 dewpoint-c=11.5").findings())
                .singleElement()
                .satisfies(
                        said ->
                                assertThat(List.of(said.value(), said.limit(), said.unit()))
                                        .containsExactly("11.5", "10.0", "°C"));
        assertThat(
                        run("sag", "span-m=100 height-diff-m=0 weight-n-per-m=0 tension-n=3000")
                                .findings())
                .singleElement()
                .satisfies(said -> assertThat(said.unit()).isEqualTo("n/m"));
    }

    @Test
    void guys_that_do_not_hold_are_told_with_others_that_would() {
        Outcome<Map<String, Object>> outcome = run("guys", "azimuths-deg=20,150,195");

        assertThat(outcome.getValue())
                .containsEntry("holds", false)
                .containsEntry("worstFactor", null);
        assertThat(outcome.getValue()).containsKey("proposedAzimuthsDeg");
        assertThat(codes(outcome)).containsExactly(FindingCode.GUY_GAP);
        assertThat(run("guys", "azimuths-deg=0,120,240").getValue()).containsEntry("holds", true);
    }

    @Test
    void the_sun_rises_and_sets_on_the_date_of_the_offset() {
        // NREL-SPA: 06:12:43 and 17:18:51 local on 17 October, not the evening before.
        Map<String, Object> sun =
                run("sun", "lat-deg=39.742476 lon-deg=-105.1786 at=2003-10-17T23:30:00-07:00")
                        .getValue();

        assertThat(secondsFrom("2003-10-17T06:12:43-07:00", sun.get("sunriseAt"))).isLessThan(6);
        assertThat(secondsFrom("2003-10-17T17:18:51-07:00", sun.get("sunsetAt"))).isLessThan(6);
    }

    @Test
    void there_is_no_sunrise_in_polar_day() {
        Map<String, Object> sun =
                run("sun", "lat-deg=71 lon-deg=26 at=2026-06-21T12:00:00+02:00").getValue();

        assertThat(sun).containsEntry("sunriseAt", null).containsEntry("sunsetAt", null);
    }

    @Test
    void all_missing_flags_are_told_at_once() {
        Outcome<Map<String, Object>> outcome = run("bridle", "d1-m=2");

        assertThat(outcome.findings())
                .extracting(Finding::subject)
                .containsExactly("mass-kg", "d2-m", "height-m");
        assertThat(codes(outcome)).containsOnly(FindingCode.FIELD_MISSING);
    }

    @Test
    void unknown_words_are_refused_with_the_nearest_known_one() {
        assertThat(run("hoover", "").findings().get(0).message()).contains("Perhaps hover.");
        assertThat(run("swing", "lenght-m=15").findings())
                .extracting(Finding::message)
                .anyMatch(message -> message.contains("Perhaps --length-m."));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "isa | altitude-m=11001",
                "air | elevation-m=0 qnh-hpa=1013 oat-c=10 dewpoint-c=11",
                "air | elevation-m=0 qnh-hpa=700 oat-c=10",
                "wind | track-deg=0 from-deg=361 speed-kt=5",
                "wind | track-deg=0 from-deg=0 speed-kt=5 tas-kt=0",
                "hover | mass-kg=0 rotor-radius-m=5 density-kgm3=1.2",
                "hover | mass-kg=1e999 rotor-radius-m=5 density-kgm3=1.2",
                "legs | mass-kg=100 legs=2 angle-deg=0",
                "legs | mass-kg=100 legs=2 angle-deg=91",
                "legs | mass-kg=100 legs=2 angle-deg=29.9",
                "fall | height-m=50 speed-kt=40 mass-kg=1e-300 drag-area-m2=1 density-kgm3=1.2",
                "hover | mass-kg=2000 rotor-radius-m=1e-300 density-kgm3=1.2",
                "sag | span-m=1e-300 height-diff-m=8 weight-n-per-m=6 tension-n=3000",
                "legs | mass-kg=100 legs=2.5 angle-deg=60",
                "bridle | mass-kg=100 d1-m=0 d2-m=0 height-m=3",
                "trail | mass-kg=100 drag-area-m2=-1 airspeed-kt=40 density-kgm3=1.2",
                "swing | length-m=15 amplitude-deg=91",
                "fall | height-m=0 speed-kt=10",
                "sag | span-m=1000 height-diff-m=0 weight-n-per-m=10 tension-n=100",
                "guy | pole-mass-kg=380 pole-length-m=12 attach-m=9 guy-angle-deg=45 lean-deg=45",
                "guy | pole-mass-kg=380 pole-length-m=12 attach-m=13 guy-angle-deg=45 lean-deg=5",
                "sun | lat-deg=91 lon-deg=0 at=2026-06-21T12:00:00Z",
                "sun | lat-deg=0 lon-deg=0 at=1900-06-21T12:00:00Z"
            })
    void a_value_outside_the_range_is_refused_not_clamped(String topic, String flags) {
        assertThat(codes(run(topic, flags))).containsOnly(FindingCode.VALUE_OUT_OF_RANGE);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "isa | altitude-m=NaN",
                "isa | altitude-m=12d",
                "isa | altitude-m=0x1p3",
                "isa | altitude-m=1,5",
                "legs | mass-kg=100 legs=2 angle-deg=60 rigid=maybe",
                "sun | lat-deg=0 lon-deg=0 at=2026-06-21T12:00:00",
                "guys | azimuths-deg=0,,240"
            })
    void what_is_no_number_or_time_is_refused(String topic, String flags) {
        assertThat(codes(run(topic, flags))).containsOnly(FindingCode.FIELD_UNREADABLE);
    }

    @Test
    void a_fall_in_air_needs_mass_area_and_density_together() {
        assertThat(run("fall", "height-m=50 speed-kt=10 tailwind-kt=5").findings())
                .extracting(Finding::subject)
                .containsExactly("mass-kg", "drag-area-m2", "density-kgm3");
    }

    @Test
    void points_go_from_one_system_to_the_other() {
        assertThat(run("point", "from=1 x=8 y=47 to=4326").getValue())
                .containsEntry("x", 7.0)
                .containsEntry("y", 46.0);
        assertThat(codes(run("point", "from=9 x=8 y=47 to=10")))
                .containsExactly(
                        FindingCode.REFERENCE_SYSTEM_UNKNOWN, FindingCode.REFERENCE_SYSTEM_UNKNOWN);
        // 100° of latitude cannot be: refused, not wrapped.
        assertThat(codes(run("point", "from=4326 x=8 y=100 to=4326")))
                .containsExactly(FindingCode.VALUE_OUT_OF_RANGE);
    }

    @Test
    void reports_are_handed_to_the_decoder() {
        assertThat(calc.run("report", Map.of("text", "METAR XXXX")).getValue())
                .containsEntry("raw", "METAR XXXX");
    }

    @Test
    void lists_its_topics_and_flags() {
        assertThat(calc.listTopics())
                .contains("isa", "air", "wind", "hover", "legs", "bridle", "trail", "swing")
                .contains("fall", "sag", "guy", "guys", "sun", "point", "report");
        assertThat(calc.listFlags("swing")).startsWith("length-m", "[amplitude-deg]");
    }

    private Outcome<Map<String, Object>> run(String topic, String flags) {
        Map<String, String> map = new LinkedHashMap<>();
        for (String flag : (flags == null ? "" : flags).strip().split(" ")) {
            int sign = flag.indexOf('=');
            if (sign > 0) {
                map.put(flag.substring(0, sign), flag.substring(sign + 1));
            }
        }
        return calc.run(topic, map);
    }

    private static List<FindingCode> codes(Outcome<?> outcome) {
        return outcome.findings().stream().map(Finding::code).toList();
    }

    private static long secondsFrom(String expected, @Nullable Object text) {
        OffsetDateTime there = OffsetDateTime.parse((String) Objects.requireNonNull(text));
        return Math.abs(there.toEpochSecond() - OffsetDateTime.parse(expected).toEpochSecond());
    }

    @Test
    void slowing_down_is_answered_way_by_way() {
        Object ways =
                run(
                                "swing",
                                "length-m=25 speed-kt=40 mass-kg=400 drag-area-m2=0.8 density-kgm3=1.1"
                                        + " deceleration-mps2=1.5 nose-up-deg=12")
                        .getValue()
                        .get("ways");

        List<?> listed = (List<?>) Objects.requireNonNull(ways);
        assertThat(listed).hasSize(4);
        Map<?, ?> first = (Map<?, ?>) listed.get(0);
        Map<?, ?> last = (Map<?, ?>) listed.get(3);
        assertThat(first.get("way")).isEqualTo("abrupt");
        // 20.578 m/s squared over twice 1.5 m/s².
        assertThat((Double) first.get("beginM")).isCloseTo(141.2, within(0.1));
        assertThat((Double) last.get("residualM")).isLessThan((Double) first.get("residualM"));
        assertThat(last.get("slack")).isEqualTo(false);
    }

    @Test
    void slowing_down_needs_mass_drag_air_and_limits() {
        assertThat(run("swing", "length-m=25 speed-kt=40").findings())
                .extracting(Finding::subject)
                .containsExactly(
                        "mass-kg",
                        "drag-area-m2",
                        "density-kgm3",
                        "deceleration-mps2",
                        "nose-up-deg");
    }

    @Test
    void a_descent_near_the_vortex_ring_is_cautioned() {
        var answer =
                run(
                        "hover",
                        "mass-kg=2250 rotor-radius-m=5.345 density-kgm3=1.225 descent-ft-per-min=400"
                                + " airspeed-kt=20");

        assertThat(answer.getValue().get("vortexRing")).isEqualTo("warned");
        assertThat(answer.getValue().get("vortexFromFtPerMin")).isNull();
        assertThat(answer.findings())
                .extracting(Finding::code)
                .containsExactly(FindingCode.VORTEX_RING);
    }
}
