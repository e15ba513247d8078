package underhook.planner.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static underhook.planner.verify.SmallDay.geo;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import underhook.core.ahead.Ahead;
import underhook.core.ahead.Answer;
import underhook.core.ahead.Beside;
import underhook.core.ahead.MonthClimate;
import underhook.core.ahead.NoticeText;
import underhook.core.ahead.PermitRule;
import underhook.core.geo.GeoPoint;
import underhook.core.job.Hours;
import underhook.core.job.HoverTable;
import underhook.core.job.Zone;

/** What can be said beside a plan, of the small day. Its straight way from A to S1 runs north from the origin. */
class AheadOfSmallDayTest {
    private static final double STRIP_M =
            SmallDay.good().job().rules().distances().stripHalfWidthM();

    private static Answer answer(SmallDay day, Answer.Topic topic, Beside beside) {
        return Ahead.of(day.job(), day.ground(), beside, Optional.empty()).stream()
                .filter(one -> one.topic() == topic)
                .findFirst()
                .orElseThrow();
    }

    private static Beside letters(PermitRule... rules) {
        return new Beside(
                Optional.empty(), Optional.empty(), Optional.empty(), Optional.of(List.of(rules)));
    }

    private static PermitRule rule(
            String subject, PermitRule.Ruling ruling, PermitRule.Season season) {
        return new PermitRule(
                subject,
                PermitRule.Activity.LOW_FLIGHT,
                ruling,
                season,
                Hours.ALL_DAY,
                "the forest's letter",
                "");
    }

    /** A zone that begins so far east of the way from A to S1. */
    private static SmallDay zoneBeside(double eastM) {
        Zone old = SmallDay.good().job().zones().get(0);
        List<GeoPoint> outline =
                List.of(
                        geo(eastM, 400),
                        geo(eastM + 100, 400),
                        geo(eastM + 100, 600),
                        geo(eastM, 600));
        return SmallDay.good()
                .zone(
                        new Zone(
                                "Z",
                                "forest",
                                outline,
                                0,
                                old.rule(),
                                List.of(),
                                old.minAglM(),
                                Optional.empty(),
                                Optional.empty(),
                                Hours.ALL_DAY,
                                "invented"));
    }

    /** A way flies over what lies within half its strip; by the formats the strip is checked, not its middle alone. */
    @ParameterizedTest
    @CsvSource({"-1, true", "1, false"})
    void a_way_is_over_an_area_that_half_its_strip_reaches(double fartherM, boolean isOver) {
        SmallDay day = zoneBeside(STRIP_M + fartherM);
        Answer told =
                answer(
                        day,
                        Answer.Topic.PERMITS,
                        letters(
                                rule(
                                        "Z",
                                        PermitRule.Ruling.FORBIDDEN,
                                        PermitRule.Season.ALL_YEAR)));

        assertThat(told.points().stream().anyMatch(point -> point.subject().equals("Z")))
                .isEqualTo(isOver);
    }

    /** A place may lie off by its spread: then it is in the area all the same. */
    @ParameterizedTest
    @CsvSource({"-0.5, true", "0.5, false"})
    void a_place_is_in_an_area_that_its_spread_reaches(double fartherM, boolean isIn) {
        double spreadM = SmallDay.good().job().rules().margins().placeSpreadM();
        double eastM = 1000 + spreadM + fartherM;
        Zone old = SmallDay.good().job().zones().get(0);
        SmallDay day =
                SmallDay.good()
                        .zone(
                                new Zone(
                                        "Z",
                                        "forest",
                                        List.of(
                                                geo(eastM, -50),
                                                geo(eastM + 100, -50),
                                                geo(eastM + 100, 50),
                                                geo(eastM, 50)),
                                        0,
                                        old.rule(),
                                        List.of(),
                                        old.minAglM(),
                                        Optional.empty(),
                                        Optional.empty(),
                                        Hours.ALL_DAY,
                                        "invented"));
        Answer told = answer(day, Answer.Topic.PERMITS, letters());

        assertThat(
                        told.points().stream()
                                .filter(point -> point.subject().equals("Z"))
                                .anyMatch(point -> point.sentences().get(0).contains("S2")))
                .isEqualTo(isIn);
    }

    /** 2028 is a leap year; a letter until the end of February was mostly written for 28 days. Common practice, no source. */
    @ParameterizedTest
    @CsvSource({
        "FORBIDDEN, NO, the forest's letter",
        "NEEDS_PERMIT, NO, the forest's letter",
        "ALLOWED, LOOK, No letter holds"
    })
    void what_forbids_until_28_february_forbids_on_the_29th(
            PermitRule.Ruling ruling, Answer.Mark mark, String said) {
        SmallDay day = SmallDay.good().inJob("date", LocalDate.of(2028, 2, 29));
        PermitRule.Season winter = new PermitRule.Season(MonthDay.of(11, 1), MonthDay.of(2, 28));
        Answer told =
                answer(
                        day,
                        Answer.Topic.PERMITS,
                        letters(rule(PermitRule.ANYWHERE, ruling, winter)));

        assertThat(told.points())
                .filteredOn(point -> point.sentences().get(0).startsWith("Flying low"))
                .singleElement()
                .satisfies(
                        point -> {
                            assertThat(point.mark()).isEqualTo(mark);
                            assertThat(String.join(" ", point.sentences())).contains(said);
                        });
    }

    /**
     * At S2 something is let go at 07:16:40 and at 08:03, a minute before and after counted; beside the letter stands one
     * that allows it all day where the case says so.
     */
    @ParameterizedTest
    @CsvSource({
        "FORBIDDEN, 08:00, 09:00, true, NO, 'The plan does it then, first at 08:02.'",
        "FORBIDDEN, 08:33, 09:00, true, LOOK, The plan comes within half an hour of that.",
        "FORBIDDEN, 08:34, 09:00, true, OK, The plan does it at other hours.",
        "FORBIDDEN, 06:00, 06:45, true, OK, The plan does it at other hours.",
        "NEEDS_PERMIT, 06:00, 07:16, true, NO, 'The plan does it then, first at 07:15.'",
        "FORBIDDEN, 12:00, 13:00, false, LOOK, No letter holds at these hours: ask whose land it is.",
        "ALLOWED, 07:00, 08:00, false, LOOK, 'The plan does it when no letter holds, first at 08:02.'",
        "ALLOWED, 07:00, 09:00, false, LOOK, The plan comes within half an hour of hours in which no letter holds.",
        "ALLOWED, 06:45, 08:34, false, OK, 'Allowed from 06:45 to 08:34, says letter 1.'"
    })
    void the_hours_of_letters_are_held_against_those_of_the_plan(
            PermitRule.Ruling ruling,
            LocalTime from,
            LocalTime until,
            boolean allowed,
            Answer.Mark mark,
            String said) {
        List<PermitRule> all = new ArrayList<>();
        all.add(unloading(ruling, new Hours(from, until), "letter 1"));
        if (allowed) {
            all.add(unloading(PermitRule.Ruling.ALLOWED, Hours.ALL_DAY, "letter 2"));
        }
        SmallDay day = SmallDay.good();
        Answer told =
                Ahead.of(
                                day.job(),
                                day.ground(),
                                letters(all.toArray(new PermitRule[0])),
                                Optional.of(day.plan()))
                        .stream()
                        .filter(one -> one.topic() == Answer.Topic.PERMITS)
                        .findFirst()
                        .orElseThrow();

        assertThat(told.points())
                .filteredOn(point -> point.subject().equals("S2"))
                .filteredOn(point -> point.sentences().get(0).startsWith("Unloading"))
                .singleElement()
                .satisfies(
                        point -> {
                            assertThat(point.mark()).as(point.toString()).isEqualTo(mark);
                            assertThat(point.sentences())
                                    .contains("Planned from 07:15 to 08:04.", said);
                        });
    }

    private static PermitRule unloading(PermitRule.Ruling ruling, Hours hours, String letter) {
        return new PermitRule(
                "S2",
                PermitRule.Activity.UNLOADING,
                ruling,
                PermitRule.Season.ALL_YEAR,
                hours,
                letter,
                "");
    }

    /**
     * By hand, at QNH 1013.25 hPa: in the middle, 10 °C at A (100 m) gives 2000 − 500 · 0.2 = 1900 kg, S1 (150 m, 1 K
     * colder) 2000 − 500 · 0.3 = 1850 kg. In warm air, 20 °C, A is at 1400 kg; S1, 1 K colder, a tenth of the way back
     * to 1850, has 1445 kg. So the middle's least is S1's and the warm air's is A's.
     */
    @Test
    void the_least_of_all_places_is_taken_for_each_air_by_itself() {
        HoverTable steep =
                new HoverTable(
                        List.of(0.0, 500.0),
                        List.of(273.15, 283.15, 293.15),
                        List.of(
                                List.of(2000.0, 1500.0),
                                List.of(2000.0, 1500.0),
                                List.of(1400.0, 1400.0)),
                        1,
                        "invented");
        Answer told =
                answer(
                        SmallDay.good().machine("hover", steep),
                        Answer.Topic.FEASIBILITY,
                        new Beside(
                                Optional.empty(),
                                Optional.of(
                                        new MonthClimate(
                                                283.15, 293.15, 101325, 100, 0.02, "invented")),
                                Optional.empty(),
                                Optional.empty()));
        String all =
                told.points().stream()
                        .flatMap(point -> point.sentences().stream())
                        .collect(Collectors.joining(" "));

        assertThat(all).contains("°C: 1850 kg; nine of ten").contains("°C: 1400 kg.");
    }

    /** Each replaces one of the year before. */
    private static String notice(int i) {
        String number = "ABCDE".charAt(i / 10_000) + String.format(Locale.ROOT, "%04d", i % 10_000);
        return "("
                + number
                + "/26 NOTAMR "
                + number
                + "/25\nQ)LSAS/QOBCE/IV/M/A/000/020/4650N01200W001\nA)LSXX B)2609010000"
                + " C)2609302359\nE)CRANE)\n";
    }

    /** With every pair looked at these would be ten thousand million steps. */
    @Test
    @Timeout(60)
    void a_long_paste_of_notices_is_answered_in_one_pass() {
        int many = 50_000;
        String paste =
                IntStream.range(0, many)
                        .mapToObj(AheadOfSmallDayTest::notice)
                        .collect(Collectors.joining("\n"));
        Answer told =
                answer(
                        SmallDay.good(),
                        Answer.Topic.NOTICES,
                        new Beside(
                                Optional.of(NoticeText.read(paste)),
                                Optional.empty(),
                                Optional.empty(),
                                Optional.empty()));

        assertThat(told.points()).hasSize(many);
    }
}
