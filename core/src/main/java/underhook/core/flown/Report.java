package underhook.core.flown;

import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import underhook.core.job.CrewId;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;
import underhook.core.unit.Units;

/** Something that was told and changes the day: what the note of a {@code REPORTED} tap says. */
public sealed interface Report {
    /** The wind where it was told: degrees true and knots in the note. */
    record WindSeen(double fromTrueRad, double meanMPerS, double gustMPerS) implements Report {}

    /** A crew comes so much after the tap. */
    record CrewLate(CrewId crew, Duration by) implements Report {}

    /** A crew is at a place, whatever was planned. */
    record CrewHere(CrewId crew, PlaceId place) implements Report {}

    /** A load was weighed or is known to weigh so much. */
    record Heavy(LoadId load, double massKg) implements Report {}

    /** Nothing may be brought to or taken from a place any more. */
    record PlaceClosed(PlaceId place) implements Report {}

    /** A load is not there. */
    record LoadMissing(LoadId load) implements Report {}

    /** Everything that the forecast says comes so much earlier. */
    record WindEarly(Duration by) implements Report {}

    /**
     * A place is not where it was planned.
     *
     * @param towardsTrueRad from where it was planned, rad from true north
     * @param byM above 0
     * @param clearM no trees within this distance of where it is now, m
     */
    record PlaceMoved(PlaceId place, double towardsTrueRad, double byM, double clearM)
            implements Report {}

    /**
     * Something stands near a place that was free when the day was planned.
     *
     * @param towardsTrueRad from the place as planned, rad from true north
     * @param atM from the place as planned, m
     * @param heightM above ground as judged, m
     */
    record StandsThere(PlaceId place, double towardsTrueRad, double atM, double heightM)
            implements Report {}

    /** The engine was off for a time that is over. */
    record EngineOff(OffsetDateTime since, OffsetDateTime until) implements Report {
        public Instant from() {
            return since.toInstant();
        }

        public Instant to() {
            return until.toInstant();
        }
    }

    /** Anything else, for people alone. */
    record Other(String words) implements Report {}

    /** A word that a note begins with, what follows it, and what it means. */
    record Form(String word, String parts, Function<MatchResult, Report> means) {}

    /** A place is said to have moved or something to stand no farther off, m. */
    double FARTHEST_M = 500;

    Map<Character, String> PARTS =
            Map.of(
                    'd',
                    "([0-9]{1,3})",
                    'n',
                    "([0-9]{1,3})",
                    'k',
                    "([0-9]{1,5})",
                    'i',
                    "(\\S+)",
                    't',
                    "([0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}(?:Z|[+-][0-9]{2}:[0-9]{2}))",
                    'w',
                    "(.*)");

    List<Form> FORMS =
            List.of(
                    new Form("wind", "dnn", Report::wind),
                    new Form(
                            "late",
                            "in",
                            said -> new CrewLate(new CrewId(said.group(1)), min(said, 2))),
                    new Form(
                            "here",
                            "ii",
                            said ->
                                    new CrewHere(
                                            new CrewId(said.group(1)), new PlaceId(said.group(2)))),
                    new Form(
                            "heavy",
                            "ik",
                            said -> new Heavy(new LoadId(said.group(1)), number(said, 2))),
                    new Form("closed", "i", said -> new PlaceClosed(new PlaceId(said.group(1)))),
                    new Form("missing", "i", said -> new LoadMissing(new LoadId(said.group(1)))),
                    new Form("early", "n", said -> new WindEarly(min(said, 1))),
                    new Form(
                            "moved",
                            "idnn",
                            said ->
                                    new PlaceMoved(
                                            new PlaceId(said.group(1)),
                                            towardsRad(said, 2),
                                            number(said, 3),
                                            number(said, 4))),
                    new Form(
                            "stands",
                            "idnn",
                            said ->
                                    new StandsThere(
                                            new PlaceId(said.group(1)),
                                            towardsRad(said, 2),
                                            number(said, 3),
                                            number(said, 4))),
                    new Form(
                            "stood",
                            "tt",
                            said ->
                                    new EngineOff(
                                            OffsetDateTime.parse(said.group(1)),
                                            OffsetDateTime.parse(said.group(2)))),
                    new Form("other", "w", said -> new Other(said.group(1))));

    /** What a note says; empty when it has none of the forms, or a number is out of its range. */
    static Optional<Report> read(String note) {
        for (Form form : FORMS) {
            String parts =
                    form.parts()
                            .chars()
                            .mapToObj(part -> " " + PARTS.get((char) part))
                            .collect(Collectors.joining());
            Matcher said = Pattern.compile(form.word() + parts).matcher(note);
            if (said.matches()) {
                return meant(form, said).filter(Report::isInRange);
            }
        }
        return Optional.empty();
    }

    private static Optional<Report> meant(Form form, MatchResult said) {
        try {
            return Optional.of(form.means().apply(said));
        } catch (DateTimeException noSuchDay) {
            return Optional.empty();
        }
    }

    /** What a tap reports; empty when it is none that reports, or cannot be read. */
    static Optional<Report> of(Tap tap) {
        return tap.kind() == TapKind.REPORTED ? read(tap.note()) : Optional.empty();
    }

    private static Report wind(MatchResult said) {
        int meanKt = number(said, 2);
        int gustKt = Math.max(meanKt, number(said, 3));
        return new WindSeen(towardsRad(said, 1), Units.ktToMPerS(meanKt), Units.ktToMPerS(gustKt));
    }

    private static boolean isInRange(Report report) {
        if (report instanceof Heavy heavy) {
            return heavy.massKg() > 0;
        }
        if (report instanceof PlaceMoved moved) {
            return moved.byM() > 0 && moved.byM() <= FARTHEST_M;
        }
        if (report instanceof StandsThere stands) {
            return stands.atM() <= FARTHEST_M && stands.heightM() > 0;
        }
        return true;
    }

    private static int number(MatchResult said, int group) {
        return Integer.parseInt(said.group(group));
    }

    private static double towardsRad(MatchResult said, int group) {
        return Units.degToRad(number(said, group) % 360);
    }

    private static Duration min(MatchResult said, int group) {
        return Duration.ofMinutes(Long.parseLong(said.group(group)));
    }
}
