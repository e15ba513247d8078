package underhook.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import underhook.core.line.HookPath;
import underhook.core.line.SlungLoad;
import underhook.core.line.Swing;
import underhook.core.line.SwingAir;
import underhook.core.line.SwingState;

/**
 * Approaches of slung loads with cross wind, slowed down and watched for 40 s, with the adaptive steps of
 * the program and with even steps of the classic fourth order that come as near.
 *
 * <p>The program's side also looks for extremes and a slack line along the way; the even steps do not.
 */
final class SwingApproaches {
    private static final int COUNT = 500;
    private static final double EVEN_STEP_S = 0.2;
    private static final double G = 9.80665;

    private record Run(SlungLoad load, SwingAir air, HookPath path) {}

    private final List<Run> runs = new ArrayList<>();
    private final List<Swing> swings = new ArrayList<>();

    SwingApproaches() {
        Random random = new Random(7);
        for (int i = 0; i < COUNT; i++) {
            SlungLoad load =
                    new SlungLoad(
                            15 + 35 * random.nextDouble(),
                            100 + 700 * random.nextDouble(),
                            1.5 * random.nextDouble(),
                            20,
                            0.4);
            SwingAir air =
                    new SwingAir(
                            1.1,
                            -6 * random.nextDouble(),
                            4 * random.nextDouble(),
                            SwingAir.Gust.NONE);
            double step = load.periodS() / 2;
            HookPath path =
                    new HookPath(
                            0.75 * (step + 6),
                            List.of(
                                    new HookPath.Part(step, -0.375, 0),
                                    new HookPath.Part(6, -0.75, 0),
                                    new HookPath.Part(step, -0.375, 0),
                                    new HookPath.Part(40, 0, 0)));
            runs.add(new Run(load, air, path));
            swings.add(new Swing(load, air));
        }
        checkEqual();
    }

    Comparison comparison() {
        return new Comparison(
                "swing",
                COUNT + " approaches in even fourth-order steps of 0.2 s",
                () -> {
                    double sum = 0;
                    for (int i = 0; i < COUNT; i++) {
                        sum += even(i)[0];
                    }
                    return sum;
                },
                () -> {
                    double sum = 0;
                    for (int i = 0; i < COUNT; i++) {
                        sum += swings.get(i).endOf(runs.get(i).path()).foreRad();
                    }
                    return sum;
                });
    }

    /** Both ways must tell the same, or their times mean nothing. */
    private void checkEqual() {
        for (int i = 0; i < COUNT; i++) {
            SwingState ours = swings.get(i).endOf(runs.get(i).path());
            double[] theirs = even(i);
            double off =
                    Math.max(
                            Math.abs(ours.foreRad() - theirs[0]),
                            Math.abs(ours.sideRad() - theirs[1]));
            if (!(off < 2e-6)) {
                throw new IllegalStateException("swing " + i + " differs by " + off + " rad.");
            }
        }
    }

    private double[] even(int index) {
        Run run = runs.get(index);
        SwingState hang = swings.get(index).hang(run.path());
        double[] state = {hang.foreRad(), hang.sideRad(), 0, 0};
        double speed = run.path().startMPerS();
        for (HookPath.Part part : run.path().parts()) {
            int steps = (int) Math.ceil(part.durationS() / EVEN_STEP_S);
            double step = part.durationS() / steps;
            for (int i = 0; i < steps; i++) {
                rungeKutta(run, state, new double[] {speed, part.forwardMPerS2(), step});
                speed += part.forwardMPerS2() * step;
            }
        }
        return state;
    }

    private static void rungeKutta(Run run, double[] state, double[] hook) {
        double step = hook[2];
        double[] first = rates(run, state, hook[0], hook[1]);
        double half = hook[0] + hook[1] * step / 2;
        double[] second = rates(run, moved(state, first, step / 2), half, hook[1]);
        double[] third = rates(run, moved(state, second, step / 2), half, hook[1]);
        double end = hook[0] + hook[1] * step;
        double[] fourth = rates(run, moved(state, third, step), end, hook[1]);
        for (int i = 0; i < 4; i++) {
            state[i] += step / 6 * (first[i] + 2 * second[i] + 2 * third[i] + fourth[i]);
        }
    }

    private static double[] moved(double[] state, double[] rates, double step) {
        double[] moved = new double[4];
        for (int i = 0; i < 4; i++) {
            moved[i] = state[i] + step * rates[i];
        }
        return moved;
    }

    private static double[] rates(Run run, double[] at, double hookSpeed, double braking) {
        SlungLoad load = run.load();
        double sinFore = Math.sin(at[0]);
        double cosFore = Math.cos(at[0]);
        double sinSide = Math.sin(at[1]);
        double cosSide = Math.cos(at[1]);
        double length = load.lengthM();
        double forward =
                hookSpeed
                        + length * (cosFore * cosSide * at[2] - sinFore * sinSide * at[3])
                        - run.air().windForwardMPerS();
        double right = length * cosSide * at[3] - run.air().windRightMPerS();
        double up = length * (sinFore * cosSide * at[2] + cosFore * sinSide * at[3]);
        double through =
                -0.5
                        * run.air().densityKgPerM3()
                        * load.wholeDragAreaM2()
                        / load.inertiaKg()
                        * Math.sqrt(forward * forward + right * right + up * up);
        double ratio = load.restoringKg() / load.inertiaKg();
        double pullForward = through * forward - ratio * braking;
        double pullUp = through * up - ratio * G;
        double alongFore = pullForward * cosFore + pullUp * sinFore;
        double alongSide =
                sinSide * (pullUp * cosFore - pullForward * sinFore) + through * right * cosSide;
        return new double[] {
            at[2],
            at[3],
            (alongFore / length + 2 * sinSide * at[2] * at[3]) / cosSide,
            alongSide / length - sinSide * cosSide * at[2] * at[2]
        };
    }
}
