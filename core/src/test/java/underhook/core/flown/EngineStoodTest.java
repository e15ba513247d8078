package underhook.core.flown;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import underhook.core.finding.FindingCode;
import underhook.core.job.LoadId;

/** A stop of the engine that is told afterwards. What can have been: common practice, no source; sums by hand. */
class EngineStoodTest {
    private static final Instant NINE = Instant.parse("2026-09-08T09:00:00Z");

    private final List<Tap> taps = new ArrayList<>();

    private Tap tap(int minute, TapKind kind, String... loads) {
        return tapped(minute, kind, "", loads);
    }

    private Tap tapped(int minute, TapKind kind, String note, String... loads) {
        String by = kind == TapKind.FREE_CONFIRMED ? "pilot" : "loader";
        Tap made =
                new Tap(
                        "t" + taps.size(),
                        NINE.plusSeconds(60L * minute),
                        by,
                        "phone",
                        kind,
                        List.of(loads).stream().map(LoadId::new).toList(),
                        Optional.empty(),
                        kind == TapKind.LINE_ON ? Tap.Amount.ofLine(25) : Tap.Amount.NONE,
                        Optional.empty(),
                        note);
        taps.add(made);
        return made;
    }

    private Tap stood(int minute, String from, String to) {
        return tapped(
                minute,
                TapKind.REPORTED,
                "stood 2026-09-08T" + from + "-01:00 2026-09-08T" + to + "-01:00");
    }

    /** On at nine, one lift from ten past to twenty past, last tap an hour later. */
    private void day() {
        tap(0, TapKind.ENGINE_ON);
        tap(1, TapKind.LINE_ON);
        tap(2, TapKind.LINE_CHECKED);
        tap(10, TapKind.HOOKED, "L1");
        tap(18, TapKind.OFF, "L1");
        tap(19, TapKind.FREE_SEEN);
        tap(20, TapKind.FREE_CONFIRMED);
        tap(60, TapKind.COUNTED);
    }

    private FlownDay flown() {
        return FlownDay.of(taps, TrainedHands.UNNAMED);
    }

    @Test
    void counts_as_if_it_had_been_tapped() {
        day();
        assertThat(flown().sums().engineOnS()).isEqualTo(3600);

        stood(60, "08:25", "08:45");

        assertThat(flown().sums().engineOnS()).isEqualTo(3600 - 20 * 60);
        assertThat(flown().conflicts()).isEmpty();
        assertThat(flown().now().engineOn()).isTrue();
    }

    @Test
    void what_cannot_have_been_says_all_its_reasons_and_counts_nothing() {
        day();
        tap(50, TapKind.ENGINE_OFF);
        tap(55, TapKind.ENGINE_ON);

        Tap wrong = stood(60, "08:12", "10:30");
        Optional<String> why =
                FlownDay.refusal(taps.subList(0, taps.size() - 1), TrainedHands.UNNAMED, wrong)
                        .map(one -> one.message());

        assertThat(why.orElseThrow())
                .contains("from 08:12 to 10:30")
                .contains("it is not over yet")
                .contains("L1 hung from 08:10 to 08:18")
                .contains("it was told to be off from 08:50 to 08:55");
        assertThat(flown().sums().engineOnS()).isEqualTo(3600 - 5 * 60);
        assertThat(flown().conflicts())
                .extracting(one -> one.finding().code())
                .containsExactly(FindingCode.TAP_OUT_OF_ORDER);
    }

    @Test
    void of_two_that_overlap_the_first_counts() {
        day();
        stood(60, "08:25", "08:45");
        stood(61, "08:40", "08:50");

        assertThat(flown().sums().engineOnS()).isEqualTo(3660 - 20 * 60);
        assertThat(flown().conflicts().get(0).finding().message())
                .contains("it was told to be off from 08:25 to 08:45");
    }

    @Test
    void it_stands_not_in_the_air_nor_backwards() {
        day();
        tap(30, TapKind.TAKE_OFF);
        tap(40, TapKind.LANDING);

        stood(60, "08:35", "08:45");
        stood(60, "08:50", "08:48");

        assertThat(flown().conflicts())
                .extracting(one -> one.finding().message())
                .anyMatch(one -> one.contains("in the air from 08:30 to 08:40"))
                .anyMatch(one -> one.contains("it ends before it begins"));
    }

    @Test
    void a_lift_that_is_told_later_takes_it_out_again() {
        day();
        stood(60, "08:25", "08:45");

        Tap late = tap(30, TapKind.HOOKED, "L2");

        assertThat(late.at()).isBefore(NINE.plusSeconds(3600));
        assertThat(flown().sums().engineOnS()).isEqualTo(3600);
        assertThat(flown().conflicts().get(0).finding().message())
                .contains("L2 hung from 08:30 on");
    }

    @Test
    void the_judge_says_the_same() {
        day();
        TapJudge judge = new TapJudge(taps, TrainedHands.UNNAMED);

        Tap wrong = stood(61, "08:12", "08:15");
        assertThat(judge.refusal(wrong)).isPresent();
        Tap good = stood(62, "08:25", "08:45");
        assertThat(judge.refusal(good)).isEmpty();
        judge.add(good);
        assertThat(judge.refusal(stood(63, "08:30", "08:35"))).isPresent();
        assertThat(Report.read("stood 2026-02-31T08:30Z 2026-03-01T09:00Z")).isEmpty();
    }
}
