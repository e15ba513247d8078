package underhook.adapter.paper;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.zone.ZoneOffsetTransition;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import underhook.app.port.Courses;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.Ground;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Job;
import underhook.core.job.LineItem;
import underhook.core.job.Load;
import underhook.core.job.MassStatus;
import underhook.core.job.PlaceId;
import underhook.core.plan.Leg;
import underhook.core.plan.Limit;
import underhook.core.plan.Step;
import underhook.core.unit.Units;

/**
 * Numbers as they are printed. What is flown is rounded to the safe side: masses, hook altitudes and
 * crosswind up; fuel, clearance and headwind down.
 */
final class Words {
    /** Keeps noise of the last binary digits from moving a whole number. */
    private static final double NOISE = 1e-6;

    /** Lines in stock that differ by less are one. */
    private static final double SAME_LINE_M = 0.01;

    private static final DateTimeFormatter CLOCK =
            DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
    private static final DateTimeFormatter CLOCK_AND_OFFSET =
            DateTimeFormatter.ofPattern("HH:mm x", Locale.ROOT);
    private static final DateTimeFormatter DATE_AND_CLOCK =
            DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);

    /** The straight way from one place to another. */
    record Way(double bearingTrueRad, double distanceM) {}

    private final Job job;
    private final Ground ground;
    private final boolean clockChanges;

    Words(Job job, Ground ground) {
        this.job = job;
        this.clockChanges = clockChanges(job);
        this.ground = ground;
    }

    /** Where a trip is hooked up: the machine may have to fly there first. */
    static PlaceId hookPlace(Step step) {
        return step.hookedUpAt();
    }

    /** On a day of a clock change with its offset: one hour of it is there twice. */
    String clock(Instant at) {
        return (clockChanges ? CLOCK_AND_OFFSET : CLOCK).format(at.atZone(job.zone()));
    }

    private static boolean clockChanges(Job job) {
        Instant begin = job.date().atStartOfDay(job.zone()).toInstant();
        Instant end = job.date().plusDays(1).atStartOfDay(job.zone()).toInstant();
        // A change at the very beginning, where midnight is skipped, leaves the day one offset.
        ZoneOffsetTransition next = job.zone().getRules().nextTransition(begin);
        return next != null && next.getInstant().isBefore(end);
    }

    String dateAndClock(Instant at) {
        ZonedDateTime zoned = at.atZone(job.zone());
        return DATE_AND_CLOCK.format(zoned) + " " + offset(zoned);
    }

    /** "UTC+02:00 (Europe/Vienna)", with the offset of the day, or both of them. */
    String zone() {
        String first = offset(job.date().atStartOfDay(job.zone()));
        String last = offset(job.date().plusDays(1).atStartOfDay(job.zone()));
        String id = job.zone().getId();
        return (clockChanges
                        ? first + ", then " + last
                        : offset(job.date().atTime(12, 0).atZone(job.zone())))
                + (id.contains("/") ? " (" + id + ")" : "");
    }

    private static String offset(ZonedDateTime zoned) {
        return "UTC" + zoned.getOffset().getId().replace("Z", "+00:00");
    }

    static long up(double value) {
        return (long) Math.ceil(value - NOISE);
    }

    static long down(double value) {
        return (long) Math.floor(value + NOISE);
    }

    /** Up to the next 5 m. */
    static long hookM(double altitudeAmslM) {
        return 5 * up(altitudeAmslM / 5);
    }

    /** Up to the next 10 ft, from the unrounded metres. */
    static long hookFt(double altitudeAmslM) {
        return 10 * up(Units.mToFt(altitudeAmslM) / 10);
    }

    /** To the nearest tenth; what is flown at all is not told as nothing. */
    static String km(double distanceM) {
        return String.format(
                Locale.ROOT, "%.1f", distanceM > 0 ? Math.max(0.1, distanceM / 1000) : 0);
    }

    /** Three digits; north is 360. The devices round a half in the same way, noise or not. */
    static String bearing(double angleRad) {
        long degrees = Math.round(Units.radToDeg(Units.wrapTwoPiRad(angleRad)) + NOISE);
        return String.format(Locale.ROOT, "%03d°", degrees == 0 ? 360 : degrees);
    }

    double magneticRad(double trueRad) {
        return trueRad - job.magneticVariationRad();
    }

    /** Knots of headwind rounded down, so that a tailwind grows. */
    static long headKt(double headMPerS) {
        return down(Units.mPerSToKt(headMPerS));
    }

    /** Knots of crosswind, rounded up. */
    static long crossKt(double crossMPerS) {
        return up(Units.mPerSToKt(Math.abs(crossMPerS)));
    }

    /** inside, near or outside. */
    static String state(Limit limit) {
        return limit.isOutside() ? "outside" : limit.isNear() ? "near" : "inside";
    }

    /** "hover mass 2 % NEAR": what is left of what stops first; inside is not said. */
    static String brief(Limit limit) {
        String state = limit.isOutside() ? " OUTSIDE" : limit.isNear() ? " NEAR" : "";
        String words = words(limit.code()) + " " + down(limit.marginPercent()) + " %" + state;
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }

    /** "3.0° E". */
    String variation() {
        double degrees = Units.radToDeg(job.magneticVariationRad());
        return String.format(Locale.ROOT, "%.1f° %s", Math.abs(degrees), degrees < 0 ? "W" : "E");
    }

    /** "hover mass 1812 of 1850 kg, 2 % left, near". */
    static String limit(Limit limit) {
        return words(limit.code())
                + " "
                + shortest(limit.value(), RoundingMode.CEILING)
                + " of "
                + shortest(limit.limit(), RoundingMode.FLOOR)
                + (limit.unit().isEmpty() ? "" : " " + limit.unit())
                + ", "
                + down(limit.marginPercent())
                + " % left, "
                + state(limit);
    }

    /** The words of a code: HOVER_MASS is "hover mass"; the id of a place behind it stays as it is. */
    static String words(String code) {
        int end = code.indexOf(' ') < 0 ? code.length() : code.indexOf(' ');
        return code.substring(0, end).toLowerCase(Locale.ROOT).replace('_', ' ')
                + code.substring(end);
    }

    private static String shortest(double value, RoundingMode rounding) {
        return BigDecimal.valueOf(value)
                .setScale(9, RoundingMode.HALF_EVEN)
                .setScale(Math.abs(value) < 100 ? 1 : 0, rounding)
                .stripTrailingZeros()
                .toPlainString();
    }

    static String joined(List<?> ids) {
        return ids.stream().map(Object::toString).collect(Collectors.joining(" + "));
    }

    static boolean isEstimated(Load load) {
        return load.massStatus() == MassStatus.ESTIMATED;
    }

    /** Mass as planned for lift, kg up; a question mark where it is missing. */
    String plannedKg(Load load) {
        OptionalDouble massKg = plannedMassKg(load);
        return massKg.isEmpty() ? "?" : Long.toString(up(massKg.getAsDouble()));
    }

    /** The same, with its pounds behind it where the list is of pounds, for so does the load cell count. */
    String plannedOnCell(Load load) {
        OptionalDouble massKg = plannedMassKg(load);
        return plannedKg(load)
                + (isPounds() && massKg.isPresent()
                        ? ", " + upLb(massKg.getAsDouble()) + " lb"
                        : "");
    }

    private OptionalDouble plannedMassKg(Load load) {
        if (load.massKg().isEmpty()) {
            return load.massKg();
        }
        double factor =
                job.getKind(load.kind()).heavierFactor()
                        * (isEstimated(load) ? job.rules().masses().estimatedMassFactor() : 1);
        return OptionalDouble.of(load.massKg().getAsDouble() * factor);
    }

    PlanePoint plane(GeoPoint point) {
        return ground.frame().toPlane(point);
    }

    double convergenceRad(PlanePoint point) {
        return ground.frame().convergenceRad(point);
    }

    Way way(PlaceId from, PlaceId to) {
        PlanePoint here = plane(job.getPlace(from).position());
        PlanePoint there = plane(job.getPlace(to).position());
        double bearingRad = here.bearingToGridRad(there) + ground.frame().convergenceRad(here);
        return new Way(Units.wrapTwoPiRad(bearingRad), here.distanceToM(there));
    }

    /** "A → S05 NOT STRAIGHT: 079° 0.6, 048° 0.2 km."; empty for a straight way. */
    Optional<String> courses(Leg leg, boolean isMagnetic) {
        List<Courses.Course> all = Courses.of(job, leg);
        return all.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        leg.from()
                                + " → "
                                + leg.to()
                                + " NOT STRAIGHT: "
                                + all.stream()
                                        .map(one -> course(one, isMagnetic))
                                        .collect(Collectors.joining(", "))
                                + " km"
                                + (isMagnetic ? "." : " TRUE."));
    }

    private String course(Courses.Course one, boolean isMagnetic) {
        double bearingRad = isMagnetic ? magneticRad(one.bearingTrueRad()) : one.bearingTrueRad();
        return bearing(bearingRad) + " " + km(one.distanceM());
    }

    /**
     * A fitted line as people ask for it: by its length, and by its name in stock where that tells another, such as
     * "100 ft (30.5 m)".
     */
    String line(double lengthM) {
        if (!(lengthM > 0)) {
            return "OFF";
        }
        String metres = PilotCards.lineLength(lengthM) + " m";
        return otherName(lengthM).map(name -> name + " (" + metres + ")").orElse(metres);
    }

    /** The same in a column of metres: only the name where it tells another length. */
    String lineInMetres(double lengthM) {
        return otherName(lengthM).orElse(PilotCards.lineLength(lengthM));
    }

    /** The same where there is no room for both. */
    String lineBriefly(double lengthM) {
        return otherName(lengthM).orElse(PilotCards.lineLength(lengthM) + " m");
    }

    private Optional<String> otherName(double lengthM) {
        String metres = PilotCards.lineLength(lengthM) + " m";
        return job.machine().lines().stream()
                .filter(line -> Math.abs(line.lengthM() - lengthM) < SAME_LINE_M)
                .map(LineItem::name)
                .filter(name -> !name.isBlank() && !name.contains(metres))
                .findFirst();
    }

    /** Whether the load list speaks pounds throughout: then so do gauge and load cell. */
    boolean isPounds() {
        List<String> typed =
                job.loads().stream().map(Load::massTyped).filter(text -> !text.isBlank()).toList();
        return !typed.isEmpty()
                && typed.stream().allMatch(text -> text.toLowerCase(Locale.ROOT).contains("lb"));
    }

    /** Whole pounds, up. */
    static long upLb(double massKg) {
        return up(Units.kgToLb(massKg));
    }

    /** Whole pounds, down. */
    static long downLb(double massKg) {
        return down(Units.kgToLb(massKg));
    }

    /** The number with its noun, in the plural where it needs one. */
    static String count(long number, String noun) {
        return number + " " + noun + (number == 1 ? "" : "s");
    }
}
