package underhook.core.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import underhook.core.line.SwingAir.Gust;
import underhook.core.unit.Units;
import underhook.testkit.SeededSamples;

/** Laws of the swing over seeded samples. */
class SwingPropertyTest {
    private static final double G = Units.STANDARD_GRAVITY_M_PER_S2;

    private static SwingState any(SeededSamples sample) {
        return new SwingState(
                sample.between(-0.7, 0.7),
                sample.between(-0.7, 0.7),
                sample.between(-0.3, 0.3),
                sample.between(-0.3, 0.3));
    }

    /** Energy over weight, m: height plus speed squared over 2 g. */
    private static double energyM(SlungLoad load, SwingState state) {
        double turn =
                Math.hypot(Math.cos(state.sideRad()) * state.foreRadPerS(), state.sideRadPerS());
        double height = -load.lengthM() * Math.cos(state.foreRad()) * Math.cos(state.sideRad());
        double speed = load.lengthM() * turn;
        return height + load.inertiaKg() / load.restoringKg() * speed * speed / (2 * G);
    }

    @Test
    void without_drag_energy_is_kept() {
        SeededSamples.of(101)
                .forEach(
                        60,
                        sample -> {
                            SlungLoad load =
                                    new SlungLoad(
                                            sample.between(5, 60),
                                            300,
                                            0,
                                            sample.between(0, 40),
                                            0);
                            List<Swing.Sample> run =
                                    new Swing(load, SwingAir.still(1.2))
                                            .trace(HookPath.steady(0), any(sample), 120, 5);
                            double first = energyM(load, run.get(0).state());
                            for (Swing.Sample at : run) {
                                // Two minutes of steps with 1e-7 each, some 150 of them.
                                assertThat(energyM(load, at.state()) / load.lengthM())
                                        .isCloseTo(first / load.lengthM(), within(2e-5));
                            }
                        });
    }

    @Test
    void with_drag_in_still_air_energy_only_falls() {
        SeededSamples.of(102)
                .forEach(
                        60,
                        sample -> {
                            SlungLoad load =
                                    new SlungLoad(
                                            sample.between(5, 60),
                                            sample.between(20, 800),
                                            sample.between(0.1, 4),
                                            sample.between(0, 40),
                                            sample.between(0, 1));
                            List<Swing.Sample> run =
                                    new Swing(load, SwingAir.still(1.2))
                                            .trace(HookPath.steady(0), any(sample), 60, 1);
                            for (int i = 1; i < run.size(); i++) {
                                // The steps' own error of 1e-7 of the length.
                                assertThat(energyM(load, run.get(i).state()))
                                        .isLessThan(
                                                energyM(load, run.get(i - 1).state())
                                                        + 1e-6 * load.lengthM());
                            }
                        });
    }

    @Test
    void left_and_right_are_alike() {
        SeededSamples.of(103)
                .forEach(
                        40,
                        sample -> {
                            SlungLoad load = SlungLoad.ofPoint(20, 150, 1);
                            double cross = sample.between(-10, 10);
                            double gust = sample.between(-8, 8);
                            HookPath path =
                                    new HookPath(
                                            20,
                                            List.of(
                                                    new HookPath.Part(
                                                            8, -2, sample.between(-1, 1))));
                            SwingResult one = run(load, path, cross, gust, 1);
                            SwingResult other = run(load, path, cross, gust, -1);
                            assertThat(other.greatestSideRad())
                                    .isCloseTo(one.greatestSideRad(), within(1e-9));
                            assertThat(other.residualM()).isCloseTo(one.residualM(), within(1e-9));
                        });
    }

    private static SwingResult run(
            SlungLoad load, HookPath path, double cross, double gust, int side) {
        HookPath mirrored =
                new HookPath(
                        path.startMPerS(),
                        path.parts().stream()
                                .map(
                                        part ->
                                                new HookPath.Part(
                                                        part.durationS(),
                                                        part.forwardMPerS2(),
                                                        side * part.rightMPerS2()))
                                .toList());
        SwingAir air = new SwingAir(1.2, 0, side * cross, new Gust(1, 3, 0, side * gust));
        return new Swing(load, air).fly(mirrored, new Swing.Watch(20, 1));
    }

    @Test
    void a_machine_moving_with_the_air_swings_its_load_as_in_still_air() {
        SeededSamples.of(104)
                .forEach(
                        40,
                        sample -> {
                            SlungLoad load = SlungLoad.ofPoint(25, 200, 1.5);
                            double drift = sample.between(-15, 15);
                            List<HookPath.Part> parts =
                                    List.of(new HookPath.Part(6, sample.between(-3, 3), 0.5));
                            SwingResult still =
                                    new Swing(load, SwingAir.still(1.1))
                                            .fly(new HookPath(10, parts), new Swing.Watch(15, 1));
                            SwingResult moved =
                                    new Swing(load, new SwingAir(1.1, drift, 0, Gust.NONE))
                                            .fly(
                                                    new HookPath(10 + drift, parts),
                                                    new Swing.Watch(15, 1));
                            assertThat(moved.greatestAftRad())
                                    .isCloseTo(still.greatestAftRad(), within(1e-7));
                            assertThat(moved.residualM())
                                    .isCloseTo(still.residualM(), within(1e-5));
                        });
    }

    @Test
    void small_changes_of_speed_swing_by_speed_over_root_of_g_and_length() {
        SeededSamples.of(105)
                .forEach(
                        60,
                        sample -> {
                            double length = sample.between(10, 60);
                            double change = sample.between(0.2, 1);
                            HookPath sudden =
                                    new HookPath(
                                            change,
                                            List.of(new HookPath.Part(change / 20, -20, 0)));
                            SwingResult result =
                                    new Swing(
                                                    SlungLoad.ofPoint(length, 400, 0),
                                                    SwingAir.still(1.2))
                                            .fly(sudden, new Swing.Watch(20, 1));
                            double expected = change / Math.sqrt(G * length);
                            // Not quite sudden, not quite small: 0.2 % together.
                            assertThat(result.greatestForeRad())
                                    .isCloseTo(expected, within(0.002 * expected));
                        });
    }
}
