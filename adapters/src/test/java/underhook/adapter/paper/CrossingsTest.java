package underhook.adapter.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import underhook.app.port.OutputWriter.Output;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;
import underhook.core.plan.Drop;
import underhook.core.plan.Leg;
import underhook.core.plan.PathPoint;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;

/**
 * Ways of 2000 m eastward at 25 m/s over a road 1550 m from their start: 62 s in still air. The wind of 4 m/s from 223.5°
 * blows with 2.75 m/s along: 56 s. Then they come down on the spot, for 160 s.
 */
class CrossingsTest {
    private static final Output DAY = PaperDay.output();
    private static final LoadId BAG = PaperDay.bag(4);

    private static Leg leg(List<LoadId> carrying, String from, String to) {
        return new Leg(
                carrying,
                new PlaceId(from),
                new PlaceId(to),
                List.of(
                        new PathPoint(PaperDay.geo(0, 0), 700),
                        new PathPoint(PaperDay.geo(2000, 0), 700),
                        new PathPoint(PaperDay.geo(2000, 0), 212)),
                2000,
                240,
                80,
                5,
                25,
                List.of(new Leg.Crossing("RV-9", PaperDay.geo(1550, 0), "guard")),
                List.of(),
                Leg.Looks.NONE);
    }

    private static Instant at(double minutes) {
        return PaperDay.START.plusMillis(Math.round(minutes * 60000));
    }

    private static List<String> told(List<Leg> legs) {
        Rotation like = PaperDay.staying().get(0).rotation().orElseThrow();
        Drop drop = like.drops().get(0);
        Rotation turn =
                new Rotation(
                        List.of(BAG),
                        at(10),
                        100,
                        300,
                        1849,
                        170,
                        0,
                        List.of(new Drop(BAG, drop.place(), at(14.6), 0, 0, 0, 0, List.of())),
                        legs,
                        List.of());
        Step step =
                new Step(
                        StepKind.ROTATION,
                        new PlaceId("B"),
                        new PlaceId("A"),
                        at(0),
                        at(19),
                        100,
                        80,
                        25,
                        true,
                        Optional.of(turn),
                        Optional.empty(),
                        List.of(),
                        "");
        return Crossings.list(
                        DAY.readJob().job(),
                        new Words(DAY.readJob().job(), DAY.readJob().ground()),
                        step)
                .stream()
                .map(Crossings.Told::brief)
                .toList();
    }

    /** By hand: 07:00 UTC is 06:00; it leaves then, is over the road after 56 s and hooks up ten minutes later. */
    @Test
    void the_way_to_where_a_load_waits_is_timed_from_its_own_start() {
        assertThat(told(List.of(leg(List.of(), "B", "A")))).containsExactly("06:00 RV-9, guard");
    }

    /** By hand: let go at 14.6 min, over the road 56 s later; 0.775 of the leg's 240 s would be two minutes late. */
    @Test
    void coming_down_on_the_spot_at_the_end_makes_no_guard_late() {
        Leg back = leg(List.of(), "S04", "A");
        Leg out =
                new Leg(
                        List.of(BAG),
                        new PlaceId("A"),
                        new PlaceId("S04"),
                        back.path(),
                        2000,
                        240,
                        80,
                        5,
                        25,
                        List.of(),
                        List.of(),
                        Leg.Looks.NONE);

        assertThat(told(List.of(out, back))).containsExactly("06:15 RV-9, guard");
    }

    /** By hand: timed back 240 s and the 30 s of the set-down from 14.6 min it begins at 10.1; 56 s later is 11.03. */
    @Test
    void a_loaded_way_is_timed_back_from_the_release() {
        assertThat(told(List.of(leg(List.of(BAG), "A", "S04"))))
                .containsExactly("06:11 RV-9, guard");
    }
}
