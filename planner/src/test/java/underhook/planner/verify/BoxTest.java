package underhook.planner.verify;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import underhook.core.geo.PlanePoint;
import underhook.testkit.SeededSamples;

class BoxTest {
    private static final Box UNIT =
            Box.round(List.of(new PlanePoint(1, 0), new PlanePoint(0, 1), new PlanePoint(0.5, 0)));

    @Test
    void touching_is_no_miss() {
        assertThat(UNIT.misses(new PlanePoint(1, 1))).isFalse();
        assertThat(UNIT.misses(new PlanePoint(1.001, 1))).isTrue();
        assertThat(UNIT.misses(new Box(1, -5, 2, 0))).isFalse();
        assertThat(UNIT.misses(new Box(1.001, -5, 2, 5))).isTrue();
        assertThat(UNIT.misses(new Box(-5, -5, 5, -0.001))).isTrue();
        assertThat(UNIT.widened(0.5).misses(new PlanePoint(-0.5, 1.5))).isFalse();
    }

    @Test
    void misses_only_what_is_surely_far() {
        SeededSamples.of(45)
                .forEach(
                        500,
                        samples -> {
                            Plane.Stretch one = stretch(samples);
                            Plane.Stretch other = stretch(samples);
                            double nearM = samples.between(0, 40);

                            boolean missed = box(one).widened(nearM).misses(box(other));

                            if (missed) {
                                assertThat(Plane.stretchesApartM(one, other)).isGreaterThan(nearM);
                            }
                        });
    }

    private static Box box(Plane.Stretch stretch) {
        return Box.round(List.of(stretch.a(), stretch.b()));
    }

    private static Plane.Stretch stretch(SeededSamples samples) {
        PlanePoint a = new PlanePoint(samples.between(0, 100), samples.between(0, 100));
        double bearingRad = samples.between(0, 6);
        return new Plane.Stretch(a, Plane.along(a, bearingRad, samples.between(0, 30)));
    }
}
