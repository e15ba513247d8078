package underhook.app.calc;

import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import underhook.core.air.AirState;
import underhook.core.air.Atmosphere;
import underhook.core.air.Wind;
import underhook.core.air.WindTriangle;
import underhook.core.aircraft.Downwash;
import underhook.core.aircraft.MomentumHover;
import underhook.core.aircraft.VortexRing;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Outcome;
import underhook.core.finding.Severity;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.Sun;
import underhook.core.geo.SunEvent;
import underhook.core.geo.SunPosition;
import underhook.core.unit.Units;

/** Air, wind, hover and sun. */
final class AirTopics {
    static final List<Topic> ALL =
            List.of(
                    new Topic(
                            "isa",
                            List.of(Flag.number("altitude-m", -5000, 11000)),
                            AirTopics::isa),
                    new Topic(
                            "air",
                            List.of(
                                    Flag.number("elevation-m", -500, 9000),
                                    Flag.number("qnh-hpa", 850, 1100),
                                    Flag.number("oat-c", -70, 60),
                                    Flag.number("dewpoint-c", -70, 60).optional()),
                            AirTopics::air),
                    new Topic(
                            "wind",
                            List.of(
                                    Flag.number("track-deg", 0, 360),
                                    Flag.number("from-deg", 0, 360),
                                    Flag.number("speed-kt", 0, 200),
                                    Flag.positive("tas-kt", 300).optional()),
                            AirTopics::wind),
                    new Topic(
                            "hover",
                            List.of(
                                    Flag.positive("mass-kg", 100000),
                                    Flag.positive("rotor-radius-m", 30),
                                    Flag.number("density-kgm3", 0.3, 2),
                                    Flag.number("below-m", 0, 500).optional(),
                                    Flag.number("descent-ft-per-min", -6000, 6000).optional(),
                                    Flag.number("airspeed-kt", 0, 200).optional()),
                            AirTopics::hover),
                    new Topic(
                            "sun",
                            List.of(
                                    Flag.number("lat-deg", -90, 90),
                                    Flag.number("lon-deg", -180, 180),
                                    Flag.of("at", Flag.Kind.TIME)),
                            AirTopics::sun));

    private AirTopics() {}

    private static Outcome<Map<String, Object>> isa(Flags flags) {
        AirState air = Atmosphere.isa(flags.number("altitude-m"));
        return new Answer()
                .with("temperatureK", air.temperatureK())
                .with("pressureHpa", Units.paToHpa(air.pressurePa()))
                .with("densityKgPerM3", air.densityKgPerM3())
                .with("densityRatio", air.densityKgPerM3() / Atmosphere.isa(0).densityKgPerM3())
                .with("soundMPerS", Atmosphere.soundMPerS(air.temperatureK()))
                .from("T = T0 - L H; p = p0 (T/T0)^(g/(R L)); rho = p/(R T)", "ICAO-7488")
                .done();
    }

    private static Outcome<Map<String, Object>> air(Flags flags) {
        if (flags.has("dewpoint-c") && flags.number("dewpoint-c") > flags.number("oat-c")) {
            return Outcome.refused(dewPointAbove(flags));
        }
        double elevation = flags.number("elevation-m");
        double qnh = Units.hpaToPa(flags.number("qnh-hpa"));
        double temperature = Units.celsiusToKelvin(flags.number("oat-c"));
        double pressureAltitude = Atmosphere.pressureAltitudeM(qnh, elevation);
        double station = Atmosphere.stationPressurePa(qnh, elevation);
        AirState air =
                flags.has("dewpoint-c")
                        ? Atmosphere.humid(
                                station,
                                temperature,
                                Units.celsiusToKelvin(flags.number("dewpoint-c")))
                        : Atmosphere.dry(station, temperature);
        double densityAltitude = Atmosphere.densityAltitudeM(air.densityKgPerM3());
        Answer answer =
                new Answer()
                        .with("pressureAltitudeM", pressureAltitude)
                        .with("pressureAltitudeFt", Units.mToFt(pressureAltitude))
                        .with("stationPressureHpa", Units.paToHpa(station))
                        .with("densityKgPerM3", air.densityKgPerM3())
                        .with("densityAltitudeM", densityAltitude)
                        .with("densityAltitudeFt", Units.mToFt(densityAltitude))
                        .with(
                                "isaDeviationK",
                                Atmosphere.isaDeviationK(pressureAltitude, temperature))
                        .from("PA = h + (T0/L)(1 - (QNH/p0)^(R L/g))", "ICAO-7488")
                        .from("DA: standard height of the density", "ICAO-7488");
        if (flags.has("dewpoint-c")) {
            answer.from("e = 6.11 10^(7.5 Td/(237.7 + Td)) hPa", "NWS-VAPOUR");
        }
        return answer.done();
    }

    private static Finding dewPointAbove(Flags flags) {
        return new Finding(
                FindingCode.VALUE_OUT_OF_RANGE,
                Severity.STOP,
                "dewpoint-c",
                String.format(Locale.ROOT, "%.1f", flags.number("dewpoint-c")),
                String.format(Locale.ROOT, "%.1f", flags.number("oat-c")),
                "°C",
                "calc air",
                "--dewpoint-c must not be above --oat-c. Perhaps the two are swapped.");
    }

    private static Outcome<Map<String, Object>> wind(Flags flags) {
        double track = Units.degToRad(flags.number("track-deg"));
        Wind wind =
                new Wind(
                        Units.degToRad(flags.number("from-deg")),
                        Units.ktToMPerS(flags.number("speed-kt")));
        Answer answer =
                new Answer()
                        .with("headKt", Units.mPerSToKt(wind.headMPerS(track)))
                        .with("crossKt", Units.mPerSToKt(wind.crossMPerS(track)))
                        .from("head = W cos(from - track); cross = W sin(from - track)", "DERIVED");
        if (!flags.has("tas-kt")) {
            return answer.done();
        }
        return WindTriangle.of(track, Units.ktToMPerS(flags.number("tas-kt")), wind)
                .fold(
                        (triangle, findings) ->
                                answer.with(
                                                "groundSpeedKt",
                                                Units.mPerSToKt(triangle.groundSpeedMPerS()))
                                        .with(
                                                "correctionDeg",
                                                Units.radToDeg(triangle.correctionRad()))
                                        .from(
                                                "sin(correction) = cross/TAS; GS = TAS cos(correction) - head",
                                                "FAA-PHAK")
                                        .done(),
                        Outcome::refused);
    }

    private static Outcome<Map<String, Object>> hover(Flags flags) {
        MomentumHover hover =
                MomentumHover.of(
                        flags.number("mass-kg"),
                        flags.number("rotor-radius-m"),
                        flags.number("density-kgm3"));
        Answer answer =
                new Answer()
                        .with("inducedMPerS", hover.inducedMPerS())
                        .with("farWakeMPerS", hover.farWakeMPerS())
                        .with("idealPowerKw", hover.idealPowerW() / 1000)
                        .with("discLoadingPa", hover.discLoadingPa())
                        .with("keepOffM", Downwash.keepOffM(flags.number("rotor-radius-m")))
                        .from("v = sqrt(T/(2 rho A)); wake = 2 v; P = T v", "LEISHMAN-2006")
                        .from("keep off: three rotor diameters, at least 100 ft", "FAA-AIM");
        if (flags.has("below-m")) {
            below(flags, hover, answer);
        }
        if (flags.has("descent-ft-per-min")) {
            descend(flags, hover, answer);
        }
        return answer.done();
    }

    private static void below(Flags flags, MomentumHover hover, Answer answer) {
        Downwash wash =
                Downwash.of(
                        hover,
                        flags.number("rotor-radius-m"),
                        flags.number("density-kgm3"),
                        flags.number("below-m"));
        answer.with("downMPerS", wash.downMPerS())
                .with("wakeRadiusM", wash.wakeRadiusM())
                .with("washPa", wash.pressurePa())
                .with("pushOnSheetN", wash.pushOnSheetN())
                .from("w = v (1 + z/sqrt(z^2 + R^2)); an estimate of the mean", "MCCORMICK-1967");
    }

    private static void descend(Flags flags, MomentumHover hover, Answer answer) {
        VortexRing ring =
                new VortexRing(
                        Units.ftPerMinuteToMPerS(flags.number("descent-ft-per-min")),
                        Units.ktToMPerS(flags.numberOr("airspeed-kt", 0)),
                        hover.inducedMPerS());
        answer.with("vortexRing", ring.nearness().name().toLowerCase(Locale.ROOT))
                .with(
                        "vortexFromFtPerMin",
                        ring.findBand()
                                .map(band -> Units.mPerSToFtPerMinute(band.fromMPerS()))
                                .orElse(null))
                .with(
                        "vortexToFtPerMin",
                        ring.findBand()
                                .map(band -> Units.mPerSToFtPerMinute(band.toMPerS()))
                                .orElse(null))
                .saying(ring.findings("descent-ft-per-min"))
                .from("region of heave instability", "JOHNSON-2005")
                .from("300 ft/min below 24 kt", "FAA-8083-21B");
    }

    private static Outcome<Map<String, Object>> sun(Flags flags) {
        GeoPoint place = new GeoPoint(flags.number("lat-deg"), flags.number("lon-deg"));
        OffsetDateTime at = flags.time("at");
        SunPosition sun = Sun.position(place, at.toInstant());
        LocalDate date = at.toLocalDate();
        ZoneOffset offset = at.getOffset();
        return new Answer()
                .with("azimuthDeg", Units.radToDeg(sun.azimuthTrueRad()))
                .with("elevationDeg", Units.radToDeg(sun.elevationApparentRad()))
                .with("elevationGeometricDeg", Units.radToDeg(sun.elevationGeometricRad()))
                .with("sunriseAt", text(Sun.find(SunEvent.SUNRISE, place, date, offset), offset))
                .with("sunsetAt", text(Sun.find(SunEvent.SUNSET, place, date, offset), offset))
                .with(
                        "civilDawnAt",
                        text(Sun.find(SunEvent.CIVIL_DAWN, place, date, offset), offset))
                .with(
                        "civilDuskAt",
                        text(Sun.find(SunEvent.CIVIL_DUSK, place, date, offset), offset))
                .from("apparent place of the sun, lower accuracy (0.01 deg)", "MEEUS-1998")
                .from("rise and set at a zenith of 90.833 deg, flat horizon", "NOAA-SOLAR")
                .done();
    }

    @SuppressWarnings("OptionalUsedAsFieldOrParameterType")
    private static @Nullable String text(Optional<Instant> time, ZoneOffset offset) {
        return time.map(
                        instant ->
                                DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(
                                        instant.atOffset(offset)))
                .orElse(null);
    }
}
