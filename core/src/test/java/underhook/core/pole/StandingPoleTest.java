package underhook.core.pole;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import underhook.core.pole.StandingPole.Guy;
import underhook.core.pole.StandingPole.Hand;
import underhook.core.pole.StandingPole.Lean;
import underhook.core.pole.StandingPole.Pulls;
import underhook.core.pole.StandingPole.Push;
import underhook.testkit.SeededSamples;

class StandingPoleTest {
    private static List<Guy> guys(double attachM, double distanceM, double... azimuthsDeg) {
        return DoubleStream.of(azimuthsDeg)
                .mapToObj(azimuth -> new Guy(Math.toRadians(azimuth), attachM, distanceM, 0))
                .toList();
    }

    @Test
    void one_windward_guy_holds_the_wind_of_the_worked_example() {
        // R-GUY-08/09 (STAT, plane statics): 426.4 N at 4.404 m, guy at 8 m, anchor at 6 m: 391.2
        // N.
        // Here the push acts at half the length, so the pole is 8.808 m long.
        StandingPole pole = new StandingPole(300, 8.808, 4, 426.4 / 245.2, guys(8, 6, 180));

        Pulls pulls = pole.findPulls(Lean.NONE, new Push(0, 245.2)).orElseThrow();

        assertThat(pulls.hardestN()).isCloseTo(391.2, within(0.003 * 391.2));
    }

    @Test
    void a_leaning_pole_pulls_as_the_worked_example_with_a_fixed_anchor() {
        // R-GUY-13 (STAT): 500 kg, centre 5.4 m, lean 3°, guy at 9 m, anchor 6 m: 284.6 N exact.
        StandingPole pole = new StandingPole(500, 10.8, 5.4, 0, guys(9, 6, 180));

        Pulls pulls = pole.findPulls(new Lean(0, Math.toRadians(3)), Push.NONE).orElseThrow();

        assertThat(pulls.hardestN()).isCloseTo(284.6, within(0.003 * 284.6));
        // The form with the guy's angle held at its upright value is on the safe side of it.
        assertThat(new GuyedPole(500, 5.4, 9, Math.atan2(9, 6)).tensionN(Math.toRadians(3)))
                .isGreaterThan(pulls.hardestN());
    }

    @Test
    void two_neighbours_share_a_push_between_them() {
        // R-GUY-10 (STAT): three guys 120° apart, push 15° off the first: 1.1154 and 0.2989 of the
        // force.
        StandingPole pole = new StandingPole(1, 10, 5, 1000, guys(10, 1000, 0, 120, 240));
        // A push of 1,000 Pa m² at half the length is 500 N at the guys' height.
        Pulls pulls =
                pole.findPulls(Lean.NONE, new Push(Math.toRadians(180 + 15), 1)).orElseThrow();
        double level = Math.cos(Math.atan2(10, 1000));

        assertThat(pulls.tensionsN().get(0) * level / 500).isCloseTo(1.1154, within(0.0005));
        assertThat(pulls.tensionsN().get(1) * level / 500).isCloseTo(0.2989, within(0.0005));
        assertThat(pulls.tensionsN().get(2)).isZero();
    }

    @Test
    void does_not_stand_when_pushed_into_a_gap_of_a_half_turn() {
        StandingPole pole = new StandingPole(371, 12, 6, 2, guys(9, 9, 20, 150, 195));

        assertThat(pole.findWorstPulls(Lean.NONE, 100)).isEmpty();
        // Pushed towards 288°, the middle of the gap: nobody pulls the other way. From there it
        // holds.
        assertThat(pole.findPulls(Lean.NONE, new Push(Math.toRadians(108), 100))).isEmpty();
        assertThat(pole.findPulls(Lean.NONE, new Push(Math.toRadians(285), 100))).isPresent();
    }

    @Test
    void an_anchor_down_the_slope_pulls_harder_than_one_up_it() {
        StandingPole down = new StandingPole(300, 10, 5, 2, List.of(new Guy(0, 9, 9, -4)));
        StandingPole up = new StandingPole(300, 10, 5, 2, List.of(new Guy(0, 9, 9, 4)));
        Push south = new Push(Math.PI, 100);

        assertThat(down.findPulls(Lean.NONE, south).orElseThrow().hardestN())
                .isGreaterThan(up.findPulls(Lean.NONE, south).orElseThrow().hardestN());
    }

    @Test
    void the_far_side_takes_in_and_the_near_side_slackens() {
        StandingPole pole = new StandingPole(300, 10, 5, 2, guys(9, 9, 0, 120, 240, 90));

        assertThat(pole.hands(new Lean(0, 0.1)))
                .containsExactly(Hand.SLACKEN, Hand.TAKE_IN, Hand.TAKE_IN, Hand.HOLD);
        assertThat(pole.hands(Lean.NONE)).containsOnly(Hand.HOLD);
    }

    @Test
    void the_pulls_undo_every_moment_and_grow_with_wind_and_lean() {
        SeededSamples.of(31)
                .forEach(
                        400,
                        samples -> {
                            double turn = samples.between(0, 360);
                            StandingPole pole =
                                    new StandingPole(
                                            samples.between(200, 600),
                                            12,
                                            samples.between(4, 7),
                                            samples.between(0.5, 3),
                                            guys(
                                                    samples.between(6, 11),
                                                    samples.between(4, 12),
                                                    turn,
                                                    turn + samples.between(60, 170),
                                                    turn + samples.between(190, 235)));
                            double towards = samples.between(0, 2 * Math.PI);
                            Lean lean = new Lean(towards, samples.between(0, 0.1));
                            Push push = new Push(towards, samples.between(1, 300));

                            pole.findPulls(lean, push)
                                    .ifPresent(
                                            pulls -> {
                                                assertThat(pulls.tensionsN())
                                                        .allMatch(tension -> tension >= 0);
                                                Pulls more =
                                                        pole.findPulls(
                                                                        lean,
                                                                        new Push(
                                                                                towards,
                                                                                push.pressurePa()
                                                                                        * 1.5))
                                                                .orElseThrow();
                                                assertThat(more.hardestN())
                                                        .isGreaterThanOrEqualTo(pulls.hardestN());
                                            });
                        });
    }

    @Test
    void refuses_what_is_out_of_range() {
        assertThatThrownBy(() -> new StandingPole(300, 10, 11, 1, guys(9, 9, 0)))
                .hasMessageContaining("centreOfGravityM");
        assertThatThrownBy(() -> new StandingPole(300, 8, 4, 1, guys(9, 9, 0)))
                .hasMessageContaining("attached");
        assertThatThrownBy(() -> new Lean(0, Double.NaN)).hasMessageContaining("angleRad");
    }
}
