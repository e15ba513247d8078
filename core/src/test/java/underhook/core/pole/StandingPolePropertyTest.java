package underhook.core.pole;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import underhook.core.pole.StandingPole.Guy;
import underhook.core.pole.StandingPole.Lean;
import underhook.core.pole.StandingPole.Pulls;
import underhook.core.pole.StandingPole.Push;
import underhook.testkit.SeededSamples;

/** Laws of a guyed pole over seeded samples. DERIVED from plane statics. */
class StandingPolePropertyTest {
    private static final int SAMPLES = 400;

    private static StandingPole sample(SeededSamples samples, double massKg, double turnRad) {
        List<Guy> guys = new ArrayList<>();
        int count = samples.wholeBetween(3, 5);
        for (int i = 0; i < count; i++) {
            double azimuth = 2 * Math.PI * (i + samples.between(-0.15, 0.15)) / count;
            guys.add(new Guy(azimuth + turnRad, 8, samples.between(5, 12), samples.between(-4, 4)));
        }
        return new StandingPole(massKg, 11, 5, 3, guys);
    }

    private static StandingPole turned(StandingPole pole, double turnRad) {
        return new StandingPole(
                pole.massKg(),
                pole.lengthM(),
                pole.centreOfGravityM(),
                pole.windAreaM2(),
                pole.guys().stream()
                        .map(
                                guy ->
                                        new Guy(
                                                guy.azimuthTrueRad() + turnRad,
                                                guy.attachM(),
                                                guy.anchorDistanceM(),
                                                guy.anchorAboveButtM()))
                        .toList());
    }

    @Test
    void turning_everything_changes_no_pull() {
        SeededSamples samples = SeededSamples.of(61);

        samples.forEach(
                SAMPLES,
                draw -> {
                    StandingPole pole = sample(draw, draw.between(100, 700), 0);
                    double turn = draw.between(0, 2 * Math.PI);
                    double towards = draw.between(0, 2 * Math.PI);
                    double lean = draw.between(0.005, 0.12);
                    double pressure = draw.between(0, 100);
                    Optional<Pulls> before =
                            pole.findPulls(new Lean(towards, lean), new Push(towards, pressure));
                    Optional<Pulls> after =
                            turned(pole, turn)
                                    .findPulls(
                                            new Lean(towards + turn, lean),
                                            new Push(towards + turn, pressure));

                    assertThat(after.isPresent()).isEqualTo(before.isPresent());
                    // A millionth of a newton: rounding of sines.
                    before.ifPresent(
                            pulls ->
                                    assertThat(after.orElseThrow().hardestN())
                                            .isCloseTo(pulls.hardestN(), within(1e-6)));
                });
    }

    @Test
    void in_calm_air_pulls_grow_with_the_mass_in_proportion() {
        SeededSamples samples = SeededSamples.of(62);

        samples.forEach(
                SAMPLES,
                draw -> {
                    StandingPole light = sample(draw, 200, 0);
                    StandingPole heavy =
                            new StandingPole(
                                    600,
                                    light.lengthM(),
                                    light.centreOfGravityM(),
                                    light.windAreaM2(),
                                    light.guys());
                    Lean lean = new Lean(draw.between(0, 2 * Math.PI), draw.between(0.005, 0.12));

                    light.findPulls(lean, Push.NONE)
                            .ifPresent(
                                    pulls ->
                                            assertThat(
                                                            heavy.findPulls(lean, Push.NONE)
                                                                    .orElseThrow()
                                                                    .hardestN())
                                                    .isCloseTo(3 * pulls.hardestN(), within(1e-6)));
                });
    }

    @Test
    void more_lean_and_more_wind_to_one_side_never_ease_the_hardest_guy() {
        SeededSamples samples = SeededSamples.of(63);

        samples.forEach(
                SAMPLES,
                draw -> {
                    StandingPole pole = sample(draw, draw.between(100, 700), 0);
                    double towards = draw.between(0, 2 * Math.PI);
                    double lean = draw.between(0.005, 0.08);
                    double pressure = draw.between(1, 100);
                    Optional<Pulls> less =
                            pole.findPulls(new Lean(towards, lean), new Push(towards, pressure));
                    Optional<Pulls> windier =
                            pole.findPulls(
                                    new Lean(towards, lean), new Push(towards, 1.5 * pressure));

                    if (less.isPresent() && windier.isPresent()) {
                        assertThat(windier.get().hardestN())
                                .isGreaterThanOrEqualTo(less.get().hardestN() - 1e-6);
                    }
                });
    }

    @Test
    void a_plumb_pole_in_calm_air_pulls_nothing_and_its_slack_guys_stay_slack() {
        StandingPole pole = sample(SeededSamples.of(64), 400, 0);

        assertThat(pole.findPulls(Lean.NONE, Push.NONE).orElseThrow().tensionsN())
                .containsOnly(0.0);
    }

    @Test
    void a_guy_past_the_horizontal_still_holds_and_a_plumb_one_does_not() {
        // The anchors stand 2 m above the attachments.
        List<Guy> above = new ArrayList<>();
        List<Guy> plumb = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            above.add(new Guy(2 * Math.PI * i / 3, 8, 8, 10));
            plumb.add(new Guy(2 * Math.PI * i / 3, 8, 1e-9, 0));
        }
        Lean lean = new Lean(1, 0.02);

        assertThat(new StandingPole(400, 11, 5, 3, above).findPulls(lean, Push.NONE)).isPresent();
        // Beside the pole a guy has no lever: what it would have to pull is beyond any anchor.
        assertThat(
                        new StandingPole(400, 11, 5, 3, plumb)
                                .findPulls(lean, Push.NONE)
                                .map(Pulls::hardestN)
                                .orElse(Double.POSITIVE_INFINITY))
                .isGreaterThan(1e9);
        assertThatThrownBy(() -> new Guy(0, 8, 0, 0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new StandingPole(0, 11, 5, 3, above))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
