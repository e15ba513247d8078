package underhook.core.flown;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import underhook.core.finding.FindingCode;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;

/** What is allowed on the day: common practice, no source. */
class FlownDayTest {
    private static final Instant SIX = Instant.parse("2026-07-14T04:00:00Z");
    private static final TrainedHands HANDS = new TrainedHands(Set.of("loader", "second"));

    private final List<Tap> taps = new ArrayList<>();
    private int minute;

    @Test
    void a_lift_goes_from_hook_up_to_two_words() {
        lineOn();
        tap(TapKind.HOOKED, "loader", "L01");
        tap(TapKind.OFF, "crew", "L01");
        tap(TapKind.FREE_SEEN, "crew");
        assertThat(day().now().notYetFree()).containsExactly(new LoadId("L01"));
        tap(TapKind.FREE_CONFIRMED, "pilot");

        FlownDay day = day();

        assertThat(day.conflicts()).isEmpty();
        assertThat(day.lifts()).hasSize(1);
        assertThat(day.lifts().get(0).isDone()).isTrue();
        assertThat(day.now().notYetFree()).isEmpty();
        assertThat(day.now().onHook()).isEmpty();
    }

    @Test
    void what_is_tapped_within_a_second_goes_as_a_lift_goes_whatever_it_is_called() {
        lineOn();
        tap(TapKind.HOOKED, "loader", "L01");
        Tap off = made(TapKind.OFF, "crew", Tap.Amount.NONE, "L01");
        taps.add(called("z", off, off));
        taps.add(called("y", off, made(TapKind.FREE_SEEN, "crew", Tap.Amount.NONE)));
        taps.add(called("x", off, made(TapKind.FREE_CONFIRMED, "spotter", Tap.Amount.NONE)));

        FlownDay day = day();

        assertThat(day.conflicts()).isEmpty();
        assertThat(day.lifts().get(0).isDone()).isTrue();
    }

    @Test
    void what_is_written_to_the_minute_happened_in_the_order_of_the_rows() {
        lineOn();
        tap(TapKind.ENGINE_ON, "pilot");
        tap(TapKind.TAKE_OFF, "pilot");
        Tap minute = made(TapKind.ENGINE_ON, "pilot", Tap.Amount.ofMass(180));
        List<TapKind> kinds =
                List.of(
                        TapKind.LANDING,
                        TapKind.ENGINE_OFF,
                        TapKind.REFUELLED,
                        TapKind.LINE_OFF,
                        TapKind.PEOPLE_ABOARD,
                        TapKind.ENGINE_ON,
                        TapKind.TAKE_OFF);
        for (TapKind kind : kinds) {
            taps.add(called("r" + taps.size(), minute, made(kind, "pilot", Tap.Amount.NONE)));
        }

        FlownDay day = FlownDay.ofRows(taps, HANDS);

        assertThat(day.taps().stream().skip(4).map(Tap::kind)).containsExactlyElementsOf(kinds);
        assertThat(day.conflicts()).isEmpty();
    }

    private static Tap called(String id, Tap when, Tap tap) {
        return like(tap, id, when.at(), tap.place());
    }

    private static Tap like(Tap tap, String id, Instant at, Optional<PlaceId> place) {
        return new Tap(
                id,
                at,
                tap.by(),
                tap.device(),
                tap.kind(),
                tap.loads(),
                place,
                tap.amount(),
                tap.undoes(),
                tap.note());
    }

    @Test
    void one_persons_word_twice_is_one_word() {
        lineOn();
        tap(TapKind.HOOKED, "loader", "L01");
        tap(TapKind.OFF, "crew", "L01");
        tap(TapKind.FREE_SEEN, "crew");
        tap(TapKind.FREE_CONFIRMED, "crew");
        tap(TapKind.HOOKED, "loader", "L02");

        FlownDay day = day();

        assertThat(codes(day))
                .containsExactly(
                        FindingCode.RELEASE_NOT_CONFIRMED, FindingCode.RELEASE_NOT_CONFIRMED);
        assertThat(day.lifts().get(0).offAt().get(0).freeAt()).isEmpty();
    }

    @Test
    void nobody_gets_in_with_the_line_on_and_nothing_is_hooked_with_people_aboard() {
        lineOn();
        assertThat(refusal(TapKind.PEOPLE_ABOARD, "loader"))
                .contains(FindingCode.LINE_ON_WITH_PEOPLE);
        tap(TapKind.LINE_OFF, "loader");
        assertThat(refusal(TapKind.PEOPLE_ABOARD, "loader")).isEmpty();
        tap(TapKind.PEOPLE_ABOARD, "loader");
        assertThat(refusal(TapKind.LINE_ON, "loader")).contains(FindingCode.LINE_ON_WITH_PEOPLE);
        assertThat(refusal(TapKind.HOOKED, "loader", "L01")).contains(FindingCode.TAP_OUT_OF_ORDER);
    }

    @Test
    void nothing_is_hooked_before_the_releases_were_tried_nor_by_untrained_hands() {
        add(TapKind.LINE_ON, "loader", Tap.Amount.ofLine(25));
        assertThat(refusal(TapKind.HOOKED, "loader", "L01")).contains(FindingCode.LINE_NOT_CHECKED);
        tap(TapKind.LINE_CHECKED, "loader");
        assertThat(refusal(TapKind.HOOKED, "helper", "L01")).contains(FindingCode.HANDLER_ABSENT);
        assertThat(refusal(TapKind.HOOKED, "loader", "L01")).isEmpty();
        tap(TapKind.SNAGGED, "pilot");
        assertThat(refusal(TapKind.HOOKED, "loader", "L01")).contains(FindingCode.LINE_NOT_CHECKED);
    }

    @Test
    void a_load_is_hooked_where_it_waits() {
        lineOn();
        TrainedHands hands =
                new TrainedHands(
                        HANDS.names(), Map.of(new LoadId("L01"), new PlaceId("A")), Map.of());
        Tap plain = made(TapKind.HOOKED, "loader", Tap.Amount.NONE, "L01");

        assertThat(FlownDay.refusal(taps, hands, plain)).isEmpty();
        assertThat(FlownDay.refusal(taps, hands, at(plain, "A"))).isEmpty();
        assertThat(FlownDay.refusal(taps, hands, at(plain, "B")))
                .hasValueSatisfying(
                        why -> assertThat(why.code()).isEqualTo(FindingCode.HANDLER_ABSENT));
    }

    /** On another line than planned every clearance and the most fuel are other ones. */
    @Test
    void a_load_is_hooked_on_the_line_it_was_planned_on() {
        lineOn();
        Tap hooked = made(TapKind.HOOKED, "loader", Tap.Amount.NONE, "L01");

        assertThat(FlownDay.refusal(taps, onLine(25.04), hooked)).isEmpty();
        assertThat(FlownDay.refusal(taps, onLine(40.5), hooked))
                .hasValueSatisfying(
                        why -> {
                            assertThat(why.code()).isEqualTo(FindingCode.LINE_OTHER);
                            assertThat(why.message())
                                    .isEqualTo(
                                            "A line of 25 m hangs there; this load was planned on a"
                                                    + " line of 40.5 m.");
                        });
    }

    private static TrainedHands onLine(double lengthM) {
        return new TrainedHands(HANDS.names(), Map.of(), Map.of(new LoadId("L01"), lengthM));
    }

    private static Tap at(Tap tap, String place) {
        return like(tap, tap.id(), tap.at(), Optional.of(new PlaceId(place)));
    }

    @Test
    void what_was_taken_back_never_was_and_taking_back_can_be_taken_back() {
        lineOn();
        tap(TapKind.HOOKED, "loader", "L01");
        String hooked = taps.get(taps.size() - 1).id();
        undo(hooked);
        assertThat(day().lifts()).isEmpty();
        undo(taps.get(taps.size() - 1).id());
        assertThat(day().lifts()).hasSize(1);
    }

    @Test
    void the_day_is_the_same_whatever_order_the_taps_arrive_in_and_however_often() {
        lineOn();
        for (int k = 1; k <= 12; k++) {
            String load = "L" + k;
            tap(TapKind.HOOKED, k % 2 == 0 ? "loader" : "second", load);
            tap(TapKind.OFF, "crew", load);
            tap(TapKind.FREE_SEEN, "crew");
            if (k % 5 != 0) {
                tap(TapKind.FREE_CONFIRMED, "pilot");
            }
        }
        FlownDay inOrder = day();
        Random random = new Random(7);
        for (int run = 0; run < 50; run++) {
            List<Tap> mixed = new ArrayList<>(taps);
            mixed.addAll(taps.subList(0, 10));
            Collections.shuffle(mixed, random);
            assertThat(FlownDay.of(mixed, HANDS)).isEqualTo(inOrder);
        }
        assertThat(inOrder.lifts()).hasSize(12);
        assertThat(inOrder.conflicts()).hasSize(2);
    }

    @Test
    void taps_are_judged_one_after_the_other_as_by_the_whole_day() {
        Random random = new Random(5);
        TapKind[] kinds = TapKind.values();
        for (int run = 0; run < 40; run++) {
            taps.clear();
            TapJudge judge = new TapJudge(taps, HANDS);
            for (int k = 0; k < 60; k++) {
                Tap tap = any(kinds[random.nextInt(kinds.length)], random);
                assertThat(judge.refusal(tap)).isEqualTo(FlownDay.refusal(taps, HANDS, tap));
                judge.add(tap);
                taps.add(tap);
            }
        }
    }

    /** Any tap, now and then one that comes late or takes another back. */
    private Tap any(TapKind kind, Random random) {
        String by = random.nextBoolean() ? "loader" : "crew";
        if (kind == TapKind.UNDONE) {
            undo(taps.isEmpty() ? "none" : taps.get(random.nextInt(taps.size())).id());
            return taps.remove(taps.size() - 1);
        }
        boolean aboutLoad = kind == TapKind.HOOKED || kind == TapKind.OFF;
        Tap.Amount amount = kind == TapKind.LINE_ON ? Tap.Amount.ofLine(25) : Tap.Amount.NONE;
        Tap tap = aboutLoad ? made(kind, by, amount, "L1") : made(kind, by, amount);
        return random.nextInt(6) > 0
                ? tap
                : like(tap, tap.id() + "late", tap.at().minusSeconds(240), tap.place());
    }

    @Test
    void two_bags_on_one_trip_are_set_down_one_after_the_other() {
        lineOn();
        tap(TapKind.HOOKED, "loader", "L07", "L36");
        tap(TapKind.OFF, "crew", "L36");
        tap(TapKind.FREE_SEEN, "crew");
        tap(TapKind.FREE_CONFIRMED, "pilot");
        assertThat(day().now().onHook()).containsExactly(new LoadId("L07"));
        assertThat(day().lifts().get(0).isDone()).isFalse();
        tap(TapKind.OFF, "crew", "L07");
        tap(TapKind.FREE_SEEN, "crew");
        tap(TapKind.FREE_CONFIRMED, "pilot");

        assertThat(day().conflicts()).isEmpty();
        assertThat(day().lifts().get(0).isDone()).isTrue();
        assertThat(day().lifts().get(0).offAt()).hasSize(2);
    }

    /** Two words for one load are no words for another that was left with one. */
    @Test
    void words_that_name_a_load_are_about_it_alone() {
        lineOn();
        tap(TapKind.HOOKED, "loader", "L06");
        tap(TapKind.OFF, "crew", "L06");
        tap(TapKind.FREE_SEEN, "crew", "L06");
        tap(TapKind.HOOKED, "loader", "L02");
        tap(TapKind.OFF, "others", "L02");
        tap(TapKind.FREE_SEEN, "others", "L02");
        tap(TapKind.FREE_CONFIRMED, "pilot", "L02");

        assertThat(day().now().notYetFree()).containsExactly(new LoadId("L06"));
        assertThat(day().lifts()).extracting(FlownLift::isDone).containsExactly(false, true);

        tap(TapKind.FREE_CONFIRMED, "pilot", "L06");
        assertThat(day().now().notYetFree()).containsExactly(new LoadId("L06"));
        tap(TapKind.FREE_SEEN, "crew", "L06");
        tap(TapKind.FREE_CONFIRMED, "pilot");
        assertThat(day().now().notYetFree()).isEmpty();
    }

    @Test
    void ten_sling_loads_and_one_landing_are_eleven_events() {
        // Row R-LIFE-01: MAKER-LETTER, a secondary copy of a manufacturer's letter.
        lineOn();
        tap(TapKind.TAKE_OFF, "pilot");
        for (int k = 1; k <= 10; k++) {
            tap(TapKind.HOOKED, "loader", "L" + k);
            tap(TapKind.OFF, "crew", "L" + k);
            tap(TapKind.FREE_SEEN, "crew");
            tap(TapKind.FREE_CONFIRMED, "pilot");
        }
        tap(TapKind.LANDING, "pilot");

        FlownDay day = day();

        assertThat(CycleRule.EVERY_LIFT.count(day.sums(), 1)).isEqualTo(11);
        // A minute for each of the 41 taps from take-off to landing.
        assertThat(day.sums().flyingS()).isEqualTo(41 * 60);
    }

    /** A load is lifted in the air, and an engine that is off flies nothing: by thought, no source. */
    @Test
    void a_flight_that_nobody_tapped_wears_the_parts_all_the_same() {
        lineOn();
        for (int flight = 1; flight <= 3; flight++) {
            tap(TapKind.ENGINE_ON, "pilot");
            for (int k = 1; k <= 2; k++) {
                String load = "L" + flight + k;
                tap(TapKind.HOOKED, "loader", load);
                tap(TapKind.OFF, "crew", load);
                tap(TapKind.FREE_SEEN, "crew");
                tap(TapKind.FREE_CONFIRMED, "pilot");
            }
            if (flight != 2) {
                tap(TapKind.LANDING, "pilot");
            }
            tap(TapKind.ENGINE_OFF, "pilot");
        }

        FlownDay day = day();

        assertThat(day.conflicts()).isEmpty();
        // Three flights and six lifts, by rule R-LIFE-01.
        assertThat(CycleRule.EVERY_LIFT.count(day.sums(), 3)).isEqualTo(9);
        assertThat(day.sums().takeOffs()).isZero();
        assertThat(day.sums().landings()).isEqualTo(2);
        assertThat(day.sums().missesTimes()).isTrue();
        // A minute for each tap from the first hook-up to landing or, where that is missing,
        // shutdown.
        assertThat(day.sums().flyingS()).isEqualTo(3 * 8 * 60);
    }

    @Test
    void a_load_told_late_makes_no_flight_of_its_own() {
        lineOn();
        tap(TapKind.ENGINE_ON, "pilot");
        tap(TapKind.TAKE_OFF, "pilot");
        tap(TapKind.HOOKED, "loader", "L01");
        tap(TapKind.LANDING, "pilot");
        tap(TapKind.ENGINE_OFF, "pilot");
        tap(TapKind.OFF, "crew", "L01");

        MachineSums sums = day().sums();

        assertThat(sums.flights()).isEqualTo(1);
        assertThat(sums.missesTimes()).isFalse();
        assertThat(sums.flyingS()).isEqualTo(2 * 60);
    }

    /** An engine that is off flies nothing, however often that is told: by thought, no source. */
    @Test
    void a_flight_ends_at_the_first_word_of_the_shutdown() {
        lineOn();
        tap(TapKind.ENGINE_ON, "pilot");
        tap(TapKind.TAKE_OFF, "pilot");
        tap(TapKind.ENGINE_OFF, "pilot");
        tap(TapKind.BRIEFED, "crew");
        tap(TapKind.ENGINE_OFF, "loader");
        tap(TapKind.LANDING, "pilot");
        tap(TapKind.ENGINE_ON, "pilot");

        assertThat(day().sums().flyingS()).isEqualTo(60);
        assertThat(day().sums().landings()).isEqualTo(1);
    }

    /** As {@link MachineSums#flights} has it: a lift after a shutdown is a flight after it. */
    @Test
    void a_lift_after_a_shutdown_is_another_flight_though_nobody_tapped_landing_or_start() {
        lineOn();
        tap(TapKind.ENGINE_ON, "pilot");
        tap(TapKind.TAKE_OFF, "pilot");
        tap(TapKind.ENGINE_OFF, "pilot");
        tap(TapKind.HOOKED, "loader", "L01");
        tap(TapKind.OFF, "crew", "L01");
        tap(TapKind.BRIEFED, "crew");

        MachineSums sums = day().sums();

        assertThat(sums.flights()).isEqualTo(2);
        // A minute to the shutdown, and two from the hook-up on.
        assertThat(sums.flyingS()).isEqualTo(3 * 60);
        assertThat(CycleRule.EVERY_LIFT.count(sums, 1)).isEqualTo(3);
        assertThat(refusal(TapKind.TAKE_OFF, "pilot")).contains(FindingCode.TAP_OUT_OF_ORDER);
    }

    /** Two loaders see one hook-up and both tap it: one lift, one cycle. By thought, no source. */
    @Test
    void one_hook_up_tapped_on_two_devices_is_one_lift_and_is_told() {
        lineOn();
        tap(TapKind.TAKE_OFF, "pilot");
        Tap hooked = made(TapKind.HOOKED, "loader", Tap.Amount.ofMass(180), "L01");
        taps.add(hooked);
        Tap again = made(TapKind.HOOKED, "second", Tap.Amount.ofMass(192), "L01");
        taps.add(like(again, again.id(), hooked.at().plusSeconds(90), Optional.empty()));
        tap(TapKind.OFF, "crew", "L01");
        tap(TapKind.FREE_SEEN, "crew");
        tap(TapKind.FREE_CONFIRMED, "pilot");

        FlownDay day = day();

        assertThat(day.sums().lifts()).isEqualTo(1);
        assertThat(day.now().onHook()).isEmpty();
        assertThat(day.lifts().get(0).massReadKg()).hasValue(192);
        assertThat(day.conflicts())
                .extracting(one -> one.finding().message())
                .containsExactly(
                        "This was tapped, but L01 was hooked a moment before by another's tap; it"
                                + " counts once.");
    }

    /** Loads in a sentence stand as on the list: without brackets. By thought, no source. */
    @Test
    void loads_are_named_as_they_are_called() {
        lineOn();
        tap(TapKind.HOOKED, "loader", "L01", "L02");
        Tap third = made(TapKind.HOOKED, "loader", Tap.Amount.NONE, "L03");
        assertThat(FlownDay.refusal(taps, HANDS, third))
                .hasValueSatisfying(
                        why ->
                                assertThat(why.message())
                                        .isEqualTo(
                                                "This was tapped, but L01, L02 still hang on the hook."));

        tap(TapKind.OFF, "crew", "L01");
        tap(TapKind.OFF, "crew", "L02");
        Tap alone = made(TapKind.FREE_CONFIRMED, "pilot", Tap.Amount.NONE);
        assertThat(FlownDay.refusal(taps, HANDS, alone))
                .hasValueSatisfying(
                        why ->
                                assertThat(why.message())
                                        .startsWith(
                                                "L01, L02 were not called free by two people."));
    }

    @Test
    void a_second_hook_up_later_or_of_one_device_stays_a_second_lift() {
        lineOn();
        Tap hooked = made(TapKind.HOOKED, "loader", Tap.Amount.NONE, "L01");
        taps.add(hooked);
        Tap other = made(TapKind.HOOKED, "second", Tap.Amount.NONE, "L01");
        Tap same = made(TapKind.HOOKED, "loader", Tap.Amount.NONE, "L01");

        taps.add(like(other, other.id(), hooked.at().plusSeconds(91), Optional.empty()));
        assertThat(day().sums().lifts()).isEqualTo(2);
        taps.remove(taps.size() - 1);
        taps.add(like(same, same.id(), hooked.at().plusSeconds(5), Optional.empty()));
        assertThat(day().sums().lifts()).isEqualTo(2);
    }

    @Test
    void a_part_is_due_at_the_first_of_its_limits() {
        // Row R-LIFE-04: MAKER-LETTER.
        PartLife byCycles = life(990, 100 * 3600.0);
        PartLife byHours = life(10, 2499.9 * 3600);
        MachineSums sums = new MachineSums(3600, 3600, 1, 1, 1, 9, 0);

        assertThat(byCycles.after(sums, 1, LocalDate.of(2026, 7, 14)).due()).isTrue();
        assertThat(byHours.after(sums, 1, LocalDate.of(2026, 7, 14)).due()).isTrue();
        PartLife.After fresh = life(10, 100 * 3600.0).after(sums, 1, LocalDate.of(2026, 7, 14));
        assertThat(fresh.due()).isFalse();
        assertThat(fresh.leftCycles()).hasValue(980);
        assertThat(fresh.dayCycles()).isEqualTo(10);
    }

    private static PartLife life(int cycles, double usedS) {
        return new PartLife(
                "mast",
                CycleRule.EVERY_LIFT,
                cycles,
                usedS,
                OptionalInt.of(1000),
                OptionalDouble.of(2500 * 3600.0),
                Optional.empty());
    }

    private void lineOn() {
        add(TapKind.LINE_ON, "loader", Tap.Amount.ofLine(25));
        tap(TapKind.LINE_CHECKED, "loader");
    }

    private void tap(TapKind kind, String by, String... loads) {
        taps.add(made(kind, by, Tap.Amount.NONE, loads));
    }

    private void add(TapKind kind, String by, Tap.Amount amount) {
        taps.add(made(kind, by, amount));
    }

    private void undo(String id) {
        Tap plain = made(TapKind.BRIEFED, "loader", Tap.Amount.NONE);
        taps.add(
                new Tap(
                        plain.id(),
                        plain.at(),
                        plain.by(),
                        plain.device(),
                        TapKind.UNDONE,
                        List.of(),
                        Optional.empty(),
                        Tap.Amount.NONE,
                        Optional.of(id),
                        ""));
    }

    private Tap made(TapKind kind, String by, Tap.Amount amount, String... loads) {
        minute++;
        return new Tap(
                String.format(Locale.ROOT, "t%03d", minute),
                SIX.plusSeconds(60L * minute),
                by,
                by + "'s phone",
                kind,
                Arrays.stream(loads).map(LoadId::new).toList(),
                Optional.empty(),
                amount,
                Optional.empty(),
                "");
    }

    private Optional<FindingCode> refusal(TapKind kind, String by, String... loads) {
        Tap.Amount amount = kind == TapKind.LINE_ON ? Tap.Amount.ofLine(25) : Tap.Amount.NONE;
        return FlownDay.refusal(taps, HANDS, made(kind, by, amount, loads))
                .map(finding -> finding.code());
    }

    private FlownDay day() {
        return FlownDay.of(taps, HANDS);
    }

    private static List<FindingCode> codes(FlownDay day) {
        return day.conflicts().stream().map(c -> c.finding().code()).toList();
    }
}
