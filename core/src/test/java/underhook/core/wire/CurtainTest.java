package underhook.core.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import underhook.core.geo.PlanePoint;
import underhook.core.wire.Curtain.Flown;
import underhook.core.wire.Curtain.Nearest;
import underhook.testkit.SeededSamples;

class CurtainTest {
    /** The answer is never above the true one; below it by less than a millionth of the way. */
    private static final double LOW_M = 1e-3;

    /** North and south along the axis, up to 520 m AMSL, 5 m to each side. */
    private static final Curtain WIRE =
            new Curtain(new PlanePoint(0, -100), new PlanePoint(0, 100), 520, 5);

    private static final Flyer BARE = new Flyer(40, 0, 0);

    private static Flown level(double[] fromTo, double hookAmslM) {
        return new Flown(
                new PlanePoint(fromTo[0], fromTo[1]),
                new PlanePoint(fromTo[2], fromTo[3]),
                hookAmslM,
                hookAmslM);
    }

    @Test
    void is_the_height_above_when_passing_over() {
        Nearest nearest = WIRE.nearest(BARE, level(new double[] {-200, 0, 300, 0}, 590));

        assertThat(nearest.leastM()).isCloseTo(30, within(LOW_M));
        // Anywhere within 5 m of the axis is as near: 195 to 205 of 500 m.
        assertThat(nearest.alongFraction()).isBetween(0.389, 0.411);
    }

    @Test
    void is_the_distance_aside_when_passing_beside_below_its_top() {
        Flown beside = level(new double[] {45, -300, 45, 300}, 540);

        assertThat(WIRE.nearest(BARE, beside).leastM()).isCloseTo(40, within(LOW_M));
        // A load of 2 m radius hangs at 500 m; the tail reaches 9 m but flies 20 m above the top.
        assertThat(WIRE.nearest(new Flyer(40, 2, 9), beside).leastM())
                .isCloseTo(Math.hypot(31, 20), within(LOW_M));
        assertThat(WIRE.nearest(new Flyer(40, 4, 0), beside).leastM()).isCloseTo(36, within(LOW_M));
    }

    @Test
    void counts_all_below_the_wire_as_wire() {
        assertThat(WIRE.nearest(BARE, level(new double[] {-50, 0, 50, 0}, 200)).leastM()).isZero();
    }

    @Test
    void measures_past_the_end_of_the_wire() {
        // 30 m east and 40 m north of its end: 50 m less the half-width.
        Flown hover = level(new double[] {30, 140, 30, 140}, 400);

        assertThat(WIRE.nearest(BARE, hover).leastM()).isCloseTo(45, within(LOW_M));
    }

    @Test
    void knows_no_height_above_an_unknown_top() {
        Curtain endless =
                new Curtain(
                        new PlanePoint(0, -100),
                        new PlanePoint(0, 100),
                        Double.POSITIVE_INFINITY,
                        5);

        assertThat(endless.nearest(BARE, level(new double[] {35, 0, 60, 0}, 9000)).leastM())
                .isCloseTo(30, within(LOW_M));
    }

    @Test
    void is_never_above_what_close_samples_find_nor_far_below() {
        SeededSamples.of(32)
                .forEach(
                        400,
                        sample -> {
                            Curtain wire =
                                    new Curtain(
                                            point(sample, 10),
                                            point(sample, 10),
                                            sample.between(400, 600),
                                            sample.between(0, 20));
                            Flyer flyer =
                                    new Flyer(
                                            sample.between(0, 60),
                                            sample.between(0, 6),
                                            sample.between(0, 10));
                            Flown flown =
                                    new Flown(
                                            point(sample, 500),
                                            point(sample, 500),
                                            sample.between(400, 700),
                                            sample.between(400, 700));
                            double leastM = wire.nearest(flyer, flown).leastM();
                            double sampledM = Double.POSITIVE_INFINITY;
                            int count = 4000;
                            for (int i = 0; i <= count; i++) {
                                double share = (double) i / count;
                                double hook = flown.hookAmslM(share);
                                double aside = wire.toAxisM(flown.at(share)) - wire.halfWidthM();
                                sampledM =
                                        Math.min(
                                                sampledM,
                                                Math.min(
                                                        space(
                                                                aside - flyer.loadRadiusM(),
                                                                hook
                                                                        - flyer.underHookM()
                                                                        - wire.topAmslM()),
                                                        space(
                                                                aside - flyer.reachM(),
                                                                hook - wire.topAmslM())));
                            }
                            assertThat(leastM).isLessThanOrEqualTo(sampledM + 1e-9);
                            // Two samples lie less than 0.4 m apart.
                            assertThat(leastM).isGreaterThanOrEqualTo(sampledM - 0.4);
                        });
    }

    private static PlanePoint point(SeededSamples sample, double withinM) {
        return new PlanePoint(sample.between(-withinM, withinM), sample.between(-withinM, withinM));
    }

    private static double space(double asideM, double aboveM) {
        return Math.hypot(Math.max(0, asideM), Math.max(0, aboveM));
    }
}
