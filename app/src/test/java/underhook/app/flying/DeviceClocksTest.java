package underhook.app.flying;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import underhook.app.evening.ClocksOff;
import underhook.app.port.KeptTap;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.flown.FlownDay;
import underhook.core.flown.Tap;
import underhook.core.flown.TapKind;
import underhook.core.flown.TrainedHands;
import underhook.core.job.LoadId;

/** When taps count whose devices' clocks are not the server's: by hand and by thought, no source. */
class DeviceClocksTest {
    private static final Instant NINE = Instant.parse("2026-07-14T07:00:00Z");
    private static final TrainedHands HANDS = new TrainedHands(Set.of("loader"));

    private final List<KeptTap> rows = new ArrayList<>();

    /** A phone 2 s behind, pressed one second after the first word. */
    @Test
    void a_second_word_that_came_later_counts_though_its_clock_is_behind() {
        lift();
        tap(TapKind.FREE_SEEN, "crew", 70, 0);
        tap(TapKind.FREE_CONFIRMED, "spotter", 71, -2);

        FlownDay day = day();

        assertThat(day.conflicts()).isEmpty();
        assertThat(day.lifts().get(0).isDone()).isTrue();
        assertThat(ClocksOff.findings(FlyingDay.tapped(rows))).isEmpty();
    }

    @Test
    void what_no_clock_explains_stays_one_word() {
        lift();
        tap(TapKind.FREE_SEEN, "crew", 70, 0);
        // Kept without network, pressed 5 s before the first word, sent after it.
        sent(made(TapKind.FREE_CONFIRMED, "spotter", 65 - 2), 100, -2);

        assertThat(codes(day())).containsExactly(FindingCode.RELEASE_NOT_CONFIRMED);
    }

    @Test
    void no_device_and_nobody_answers_himself() {
        lift();
        tap(TapKind.FREE_SEEN, "crew", 70, 0);
        Tap same = made(TapKind.FREE_CONFIRMED, "spotter", 69);
        sent(
                new Tap(
                        same.id(),
                        same.at(),
                        "spotter",
                        "crew's phone",
                        same.kind(),
                        same.loads(),
                        same.place(),
                        same.amount(),
                        same.undoes(),
                        ""),
                71,
                -2);
        assertThat(codes(day())).containsExactly(FindingCode.RELEASE_NOT_CONFIRMED);

        rows.remove(rows.size() - 1);
        Tap own = made(TapKind.FREE_CONFIRMED, "crew", 69);
        sent(
                new Tap(
                        own.id(),
                        own.at(),
                        "crew",
                        "another phone",
                        own.kind(),
                        own.loads(),
                        own.place(),
                        own.amount(),
                        own.undoes(),
                        ""),
                71,
                -2);
        assertThat(codes(day())).containsExactly(FindingCode.RELEASE_NOT_CONFIRMED);
    }

    /** The engine ran half an hour; the phone that says so is three hours ahead. */
    @Test
    void a_clock_hours_ahead_lengthens_no_engine_time_and_is_told() {
        tap(TapKind.ENGINE_ON, "loader", 0, 0);
        tap(TapKind.TAKE_OFF, "loader", 60, 0);
        tap(TapKind.LANDING, "pilot", 1700, 3 * 3600);
        tap(TapKind.ENGINE_OFF, "pilot", 1800, 3 * 3600);

        FlownDay day = day();

        assertThat(day.sums().engineOnS()).isEqualTo(1800);
        assertThat(day.sums().flyingS()).isEqualTo(1640);
        assertThat(rows.get(3).tap().at()).isEqualTo(NINE.plusSeconds(1800 + 3 * 3600));
        assertThat(FlyingDay.tapped(rows).deviceAt())
                .containsEntry(rows.get(3).tap().id(), NINE.plusSeconds(1800 + 3 * 3600))
                .hasSize(2);
        assertThat(ClocksOff.findings(FlyingDay.tapped(rows)))
                .singleElement()
                .extracting(Finding::message)
                .isEqualTo(
                        "The clock of pilot's phone was up to 180 min ahead of the server's: 2 taps count by"
                                + " the server's.");
    }

    /** The engine ran half an hour; the phone that says when it stopped is 20 min behind. */
    @Test
    void a_clock_many_minutes_behind_shortens_no_engine_time_and_is_told() {
        tap(TapKind.ENGINE_ON, "loader", 0, 0);
        tap(TapKind.ENGINE_OFF, "pilot", 1800, -1200);

        assertThat(day().sums().engineOnS()).isEqualTo(1800);
        assertThat(ClocksOff.findings(FlyingDay.tapped(rows)))
                .singleElement()
                .extracting(Finding::message)
                .isEqualTo(
                        "The clock of pilot's phone was up to 20 min behind the server's: one tap counts by"
                                + " the server's.");
    }

    /** Tapped at 100 s by a right clock; the phone came back to life 2 h behind and sent it. */
    @Test
    void what_was_tapped_before_the_clock_fell_behind_counts_as_tapped() {
        tap(TapKind.ENGINE_ON, "loader", 0, 0);
        sent(made(TapKind.ENGINE_OFF, "pilot", 100), 4000, -7200);
        sent(made(TapKind.LINE_OFF, "pilot", 4100 - 7200), 4100, -7200);

        List<Tap> counted = FlyingDay.tapped(rows).taps();

        assertThat(counted.get(1).at()).isEqualTo(NINE.plusSeconds(100));
        assertThat(counted.get(2).at()).isEqualTo(NINE.plusSeconds(4100));
    }

    /** Without network from 100 s on; all is sent at 4000 s. */
    @Test
    void what_waited_on_a_device_ahead_keeps_its_distance_from_the_sending() {
        tap(TapKind.ENGINE_ON, "loader", 0, 0);
        Tap off = made(TapKind.ENGINE_OFF, "pilot", 100 + 7200);
        sent(off, 4000, 7200);

        assertThat(day().sums().engineOnS()).isEqualTo(100);
    }

    /** The first was three seconds on the way. */
    @Test
    void a_slow_network_turns_no_two_taps_of_a_device_round() {
        tap(TapKind.ENGINE_ON, "loader", 0, 0);
        sent(made(TapKind.OFF, "pilot", 100 + 3600), 103, 3600 - 3);
        sent(made(TapKind.FREE_SEEN, "pilot", 101 + 3600), 104, 3600);

        List<Tap> counted = FlyingDay.tapped(rows).taps();

        assertThat(Duration.between(counted.get(1).at(), counted.get(2).at()))
                .isEqualTo(Duration.ofSeconds(1));
    }

    @Test
    void what_was_tapped_before_the_clock_was_set_counts_in_its_order_and_not_after_it_came() {
        Tap first = made(TapKind.FREE_SEEN, "pilot", 3600);
        Tap second = made(TapKind.ENGINE_OFF, "pilot", 3601);
        sent(first, 50, 0);
        sent(second, 50, 0);

        List<Tap> counted = FlyingDay.tapped(rows).taps();

        assertThat(counted.get(0).at()).isEqualTo(NINE.plusSeconds(50));
        assertThat(counted.get(1).at()).isBetween(NINE.plusSeconds(50), NINE.plusSeconds(51));
        assertThat(counted.get(1).at()).isAfter(counted.get(0).at());
    }

    @Test
    void clocks_within_half_a_minute_are_left_as_they_are() {
        tap(TapKind.ENGINE_ON, "loader", 0, 29);
        tap(TapKind.ENGINE_OFF, "pilot", 600, -29);

        assertThat(FlyingDay.tapped(rows).deviceAt()).isEmpty();
        assertThat(day().sums().engineOnS()).isEqualTo(600 - 58);
    }

    private void lift() {
        Tap line = made(TapKind.LINE_ON, "loader", 0);
        sent(
                new Tap(
                        line.id(),
                        line.at(),
                        line.by(),
                        line.device(),
                        line.kind(),
                        List.of(),
                        line.place(),
                        Tap.Amount.ofLine(25),
                        line.undoes(),
                        ""),
                0,
                0);
        tap(TapKind.LINE_CHECKED, "loader", 5, 0);
        tap(TapKind.HOOKED, "loader", 10, 0);
        tap(TapKind.OFF, "crew", 60, 0);
    }

    /** Tapped and sent at once. */
    private void tap(TapKind kind, String by, int trueS, int aheadS) {
        sent(made(kind, by, trueS + aheadS), trueS, aheadS);
    }

    private static Tap made(TapKind kind, String by, int deviceS) {
        List<LoadId> loads =
                Set.of(TapKind.HOOKED, TapKind.OFF, TapKind.FREE_SEEN, TapKind.FREE_CONFIRMED)
                                .contains(kind)
                        ? List.of(new LoadId("L1"))
                        : List.of();
        return new Tap(
                kind + " " + by + " " + deviceS,
                NINE.plusSeconds(deviceS),
                by,
                by + "'s phone",
                kind,
                loads,
                Optional.empty(),
                Tap.Amount.NONE,
                Optional.empty(),
                "");
    }

    private void sent(Tap tap, int receivedS, int aheadS) {
        Instant received = NINE.plusSeconds(receivedS);
        KeptTap.Arrival arrival =
                new KeptTap.Arrival("crew", received.plusSeconds(aheadS), received, true, "");
        rows.add(new KeptTap(rows.size() + 1, tap, arrival, ""));
    }

    private FlownDay day() {
        return FlownDay.of(FlyingDay.tapped(rows).taps(), HANDS);
    }

    private static List<FindingCode> codes(FlownDay day) {
        return day.conflicts().stream().map(one -> one.finding().code()).toList();
    }
}
