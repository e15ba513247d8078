package underhook.core.ahead;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import underhook.core.ahead.Answer.Mark;
import underhook.core.ahead.Answer.Point;
import underhook.core.ahead.Answer.Topic;
import underhook.core.ahead.Notice.Circle;
import underhook.core.ahead.Notice.Unread;
import underhook.core.ahead.Notice.Validity;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.LocalFrame;
import underhook.core.geo.PlaneLine;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Job;
import underhook.core.job.Rules;
import underhook.core.plan.Leg;
import underhook.core.plan.Plan;
import underhook.core.plan.Step;

/**
 * How near each notice is to the day's places and legs, and whether it is in force then.
 *
 * <p>A notice's place is written to the whole minute, so it may be half a minute off both ways; distances are
 * told as what they are at least. Whatever cannot be read counts as here and now. A notice is never left out:
 * what is far or over stands last.
 */
final class NearNotices {
    /** Farther off a notice is only noted. @source PRACTICE five nautical miles around the work */
    private static final double NEAR_M = 9260;

    /** Mean radius of the earth, m; 1 % is taken off what is worked out with it. @source NGA-WGS84 */
    private static final double EARTH_RADIUS_M = 6_371_000;

    private static final DateTimeFormatter UTC =
            DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT).withZone(ZoneOffset.UTC);

    private record Way(String name, PlaneLine line) {}

    /** How far something is at least, and from what. */
    private record Near(double atLeastM, String what) {}

    private final LocalFrame frame;
    private final GeoPoint origin;
    private final List<Way> ways;
    private final Instant begin;
    private final Instant end;

    private NearNotices(Job job, List<Way> ways) {
        this.frame = LocalFrame.of(job.origin());
        this.origin = job.origin();
        this.ways = ways;
        Rules.Duty duty = job.rules().duty();
        this.begin = duty.from();
        this.end = begin.plusSeconds((long) Math.ceil(duty.longestS()));
    }

    static NearNotices of(Job job, Optional<Plan> plan) {
        LocalFrame frame = LocalFrame.of(job.origin());
        List<Way> ways = new ArrayList<>();
        job.places()
                .forEach(
                        place -> {
                            PlanePoint at = frame.toPlane(place.position());
                            ways.add(new Way(place.id().value(), new PlaneLine(at, at)));
                        });
        if (plan.isPresent()) {
            plan.get().steps().stream()
                    .flatMap(NearNotices::legs)
                    .forEach(leg -> addLeg(leg, frame, ways));
        } else {
            job.loads()
                    .forEach(
                            load -> {
                                GeoPoint from = job.getPlace(load.from()).position();
                                GeoPoint to = job.getPlace(load.to()).position();
                                ways.add(
                                        new Way(
                                                load.from() + " – " + load.to(),
                                                new PlaneLine(
                                                        frame.toPlane(from), frame.toPlane(to))));
                            });
        }
        return new NearNotices(job, ways);
    }

    static Stream<Leg> legs(Step step) {
        return Stream.concat(
                step.legs().stream(),
                step.rotation().stream().flatMap(rotation -> rotation.legs().stream()));
    }

    private static void addLeg(Leg leg, LocalFrame frame, List<Way> ways) {
        for (int i = 0; i + 1 < leg.path().size(); i++) {
            ways.add(
                    new Way(
                            leg.from() + " – " + leg.to(),
                            new PlaneLine(
                                    frame.toPlane(leg.path().get(i).position()),
                                    frame.toPlane(leg.path().get(i + 1).position()))));
        }
    }

    Answer answer(List<Notice> notices) {
        if (notices.isEmpty()) {
            return new Answer(
                    Topic.NOTICES,
                    List.of(
                            new Point(
                                    Mark.LOOK,
                                    "notices",
                                    List.of("The file holds no text at all."))));
        }
        Map<String, String> laterOnes =
                notices.stream()
                        .filter(notice -> !notice.refersTo().isEmpty())
                        .collect(
                                Collectors.groupingBy(
                                        Notice::refersTo,
                                        Collectors.mapping(
                                                Notice::number, Collectors.joining(", "))));
        return new Answer(
                Topic.NOTICES,
                notices.stream()
                        .sorted(
                                Comparator.comparing(this::mark)
                                        .thenComparing(notice -> atLeastM(circle(notice)))
                                        .thenComparing(notice -> atLeastM(named(notice)))
                                        .thenComparing(Notice::number))
                        .map(notice -> point(notice, laterOnes))
                        .toList());
    }

    private static double atLeastM(Optional<Near> near) {
        return near.map(Near::atLeastM).orElse(0.0);
    }

    private Mark mark(Notice notice) {
        if (!notice.unread().isEmpty()) {
            return Mark.UNREAD;
        }
        // A slip of the pen in item Q must not hide what the text names here.
        boolean isNear =
                circle(notice).map(near -> near.atLeastM <= NEAR_M).orElse(true)
                        || named(notice).filter(near -> near.atLeastM <= NEAR_M).isPresent();
        boolean isNow = notice.validity().map(when -> when.mayTouch(begin, end)).orElse(true);
        return isNear && isNow ? Mark.LOOK : Mark.NOTED;
    }

    private Point point(Notice notice, Map<String, String> laterOnes) {
        List<String> said = new ArrayList<>();
        notice.unread().forEach(one -> said.add(say(one)));
        circle(notice).ifPresent(near -> said.add(sayCircle(near)));
        named(notice).ifPresent(near -> said.add(sayNamed(near)));
        notice.validity().ifPresent(when -> said.add(say(when)));
        if (!notice.schedule().isEmpty()) {
            said.add("Within that only at the times of its item D: read them.");
        }
        if (!notice.levels().isEmpty()) {
            said.add(
                    "Flight levels "
                            + notice.levels().replace("/", " to ")
                            + " as a filter; what counts is its text.");
        }
        said.addAll(NoticeTopics.of(notice));
        if (!notice.refersTo().isEmpty()) {
            said.add(
                    notice.kind() == Notice.Kind.CANCELS
                            ? "It cancels " + notice.refersTo() + "."
                            : "It replaces " + notice.refersTo() + ".");
        }
        String later = laterOnes.getOrDefault(notice.number(), "");
        if (!later.isEmpty()) {
            said.add("Replaced or cancelled by " + later + ", says the file.");
        }
        return new Point(mark(notice), notice.nameOrLine(), said, notice.raw());
    }

    private static String say(Unread unread) {
        return "Line "
                + unread.line()
                + ", item "
                + unread.item()
                + " is unread: "
                + (unread.value().isEmpty() ? "nothing stands there" : "'" + unread.value() + "'")
                + "; readable is "
                + unread.allowed()
                + ".";
    }

    private static String sayCircle(Near near) {
        return near.atLeastM <= 0
                ? "Its circle may reach " + near.what + "."
                : "From " + near.what + " its circle is " + km(near.atLeastM) + " km away or more.";
    }

    private static String sayNamed(Near near) {
        return "From "
                + near.what
                + " a position in its text is "
                + km(near.atLeastM)
                + " km away or more.";
    }

    private String say(Validity when) {
        String until =
                when.until()
                        .map(last -> UTC.format(last) + (when.isEstimated() ? " (estimated)" : ""))
                        .orElse("further notice");
        return (when.mayTouch(begin, end)
                        ? "In force in the day's hours: from "
                        : "Not in force in the day's hours: from ")
                + UTC.format(when.from())
                + " until "
                + until
                + " UTC.";
    }

    /** Rounded down. */
    private static String km(double distanceM) {
        return String.format(Locale.ROOT, "%.1f", Math.floor(distanceM / 100) / 10);
    }

    private Optional<Near> circle(Notice notice) {
        return notice.circle().map(circle -> near(circle, Circle.HALF_MINUTE_M));
    }

    private Optional<Near> named(Notice notice) {
        return notice.named().stream()
                .map(circle -> near(circle, 0))
                .min(Comparator.comparingDouble(Near::atLeastM));
    }

    private Near near(Circle circle, double openM) {
        Near near = nearest(circle.centre());
        return new Near(Math.max(0, near.atLeastM - circle.radiusM() - openM), near.what);
    }

    /** Outside of the plane's reach by the great circle, with the day's own extent taken off. */
    private Near nearest(GeoPoint point) {
        if (greatCircleM(origin, point) > 150_000 || Math.abs(point.latDeg()) > 84) {
            double extentM =
                    ways.stream()
                            .flatMap(way -> Stream.of(way.line.from(), way.line.to()))
                            .mapToDouble(at -> Math.hypot(at.eastM(), at.northM()))
                            .max()
                            .orElse(0);
            return new Near(
                    Math.max(0, 0.99 * greatCircleM(origin, point) - extentM), ways.get(0).name);
        }
        PlanePoint at = frame.toPlane(point);
        return ways.stream()
                .map(way -> new Near(way.line.distanceToM(at), way.name))
                .min(Comparator.comparingDouble(Near::atLeastM))
                .orElseThrow();
    }

    static double greatCircleM(GeoPoint one, GeoPoint other) {
        double latA = Math.toRadians(one.latDeg());
        double latB = Math.toRadians(other.latDeg());
        double across = Math.toRadians(other.lonDeg() - one.lonDeg());
        double half =
                Math.pow(Math.sin((latB - latA) / 2), 2)
                        + Math.cos(latA) * Math.cos(latB) * Math.pow(Math.sin(across / 2), 2);
        return 2 * EARTH_RADIUS_M * Math.asin(Math.min(1, Math.sqrt(half)));
    }
}
