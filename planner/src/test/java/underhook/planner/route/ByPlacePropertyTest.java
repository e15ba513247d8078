package underhook.planner.route;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Envelope;
import underhook.testkit.SeededSamples;

class ByPlacePropertyTest {
    @Test
    void finds_all_that_meet_and_keeps_their_order() {
        SeededSamples.of(48)
                .forEach(
                        200,
                        samples -> {
                            List<Envelope> all = new ArrayList<>();
                            int count = samples.wholeBetween(0, 60);
                            for (int i = 0; i < count; i++) {
                                all.add(extent(samples));
                            }
                            Envelope asked = extent(samples);

                            List<Envelope> found = new ByPlace<>(all, one -> one).near(asked);

                            assertThat(found)
                                    .containsExactlyElementsOf(
                                            all.stream().filter(asked::intersects).toList());
                        });
    }

    private static Envelope extent(SeededSamples samples) {
        double eastM = samples.between(0, 100);
        double northM = samples.between(0, 100);
        return new Envelope(
                eastM, eastM + samples.between(0, 30), northM, northM + samples.between(0, 30));
    }
}
