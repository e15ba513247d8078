package underhook.core.fall;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import underhook.core.job.LoadShape;
import underhook.testkit.SeededSamples;

class PatchPropertyTest {
    private static Release release(SeededSamples samples) {
        double heightM = samples.between(15, 250);
        double heavyKg = samples.between(60, 700);
        double areaM2 = samples.between(0.1, 3);
        double speedMPerS = samples.between(2, 32);
        return new Release(
                heightM,
                samples.between(0, Math.min(20, heightM / 3)),
                speedMPerS,
                samples.between(0, speedMPerS / 4),
                new Release.Drift(
                        samples.between(-15, 15), samples.between(-15, 15), samples.between(0, 5)),
                new Release.Hanging(
                        new Fall.Body(heavyKg * 0.8, areaM2 * 1.3, 1.2),
                        new Fall.Body(heavyKg, areaM2, 1.2),
                        samples.between(10, 50),
                        samples.between(0, 0.4),
                        samples.between(0, 0.3)));
    }

    /** One landing with every uncertain thing at a share of its spread, from -1 to 1. */
    private static FallingCorners.Impact land(Release release, double[] share) {
        Release.Hanging hanging = release.hanging();
        double light = hanging.light().retardationCoefficient();
        double heavy = hanging.heavy().retardationCoefficient();
        double angle = share[4] * hanging.swingRad();
        double speedNow =
                Math.signum(share[5])
                        * Math.sqrt(
                                2
                                        * 9.80665
                                        * hanging.lineLengthM()
                                        * Math.max(
                                                0, Math.cos(angle) - Math.cos(hanging.swingRad())));
        double side = share[6] * hanging.swingRad();
        return new FallPath(
                        new FallingCorners.Start(
                                hanging.lineLengthM() * Math.sin(angle - hanging.trailRad()),
                                hanging.lineLengthM() * Math.sin(side),
                                Math.max(
                                                0,
                                                release.groundSpeedMPerS()
                                                        + share[1] * release.speedSpreadMPerS())
                                        + speedNow,
                                0,
                                heavy + (1 + share[3]) / 2 * (light - heavy)),
                        new FallingCorners.Wind(
                                release.drift().forwardMPerS()
                                        + share[2] * release.drift().spreadMPerS(),
                                release.drift().rightMPerS()
                                        + share[7] * release.drift().spreadMPerS()))
                .untilGround(List.of(release.heightM() + share[0] * release.heightSpreadM()))
                .get(0);
    }

    @Test
    void every_landing_within_the_spreads_lies_in_the_patch() {
        // No source: sampled with a fixed seed, followed by an integrator of its own.
        SplittableRandom random = new SplittableRandom(11);
        SeededSamples.of(41)
                .forEach(
                        60,
                        samples -> {
                            Release release = release(samples);
                            Patch patch = Patch.of(release, LoadShape.BAG, Patch.Ground.LEVEL);
                            for (int i = 0; i < 300; i++) {
                                double[] share = random.doubles(8, -1, 1).toArray();
                                FallingCorners.Impact hit = land(release, share);
                                assertThat(patch.holds(hit.forwardM(), hit.rightM()))
                                        .as("%s %s", release, hit)
                                        .isTrue();
                            }
                        });
    }

    @Test
    void with_spreads_of_two_standard_deviations_it_holds_more_than_95_of_100() {
        SplittableRandom random = new SplittableRandom(12);
        SeededSamples.of(42)
                .forEach(
                        20,
                        samples -> {
                            Release release = release(samples);
                            Patch patch = Patch.of(release, LoadShape.BOX, Patch.Ground.LEVEL);
                            int held = 0;
                            for (int i = 0; i < 1000; i++) {
                                double[] share = new double[8];
                                for (int k = 0; k < share.length; k++) {
                                    share[k] = random.nextGaussian() / 2;
                                }
                                // Height, drag and swing have hard ends.
                                for (int k : new int[] {0, 3, 4, 6}) {
                                    share[k] = Math.max(-1, Math.min(1, share[k]));
                                }
                                FallingCorners.Impact hit = land(release, share);
                                held += patch.holds(hit.forwardM(), hit.rightM()) ? 1 : 0;
                            }
                            assertThat(held).isGreaterThan(950);
                        });
    }

    @Test
    void without_wind_and_swing_it_is_the_same_to_both_sides() {
        SeededSamples.of(44)
                .forEach(
                        50,
                        samples -> {
                            Release base = release(samples);
                            Release calm =
                                    new Release(
                                            base.heightM(),
                                            base.heightSpreadM(),
                                            base.groundSpeedMPerS(),
                                            base.speedSpreadMPerS(),
                                            new Release.Drift(0, 0, 0),
                                            base.hanging());

                            Patch patch = Patch.of(calm, LoadShape.ROUND, Patch.Ground.LEVEL);

                            assertThat(patch.leftM()).isCloseTo(patch.rightM(), within(1e-6));
                        });
    }

    @Test
    void more_of_anything_uncertain_never_makes_it_smaller() {
        SeededSamples.of(45)
                .forEach(
                        60,
                        samples -> {
                            Release base = release(samples);
                            Release wider =
                                    new Release(
                                            base.heightM(),
                                            base.heightSpreadM(),
                                            base.groundSpeedMPerS(),
                                            base.speedSpreadMPerS() + 1,
                                            new Release.Drift(
                                                    base.drift().forwardMPerS(),
                                                    base.drift().rightMPerS(),
                                                    base.drift().spreadMPerS() + 1),
                                            base.hanging());

                            Patch one = Patch.of(base, LoadShape.BAG, Patch.Ground.LEVEL);
                            Patch other = Patch.of(wider, LoadShape.BAG, Patch.Ground.LEVEL);

                            assertThat(other.forwardM()).isGreaterThanOrEqualTo(one.forwardM());
                            assertThat(other.backM()).isLessThanOrEqualTo(one.backM());
                            assertThat(other.rightM()).isGreaterThanOrEqualTo(one.rightM());
                        });
    }
}
