package underhook.planner.route;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.GridHeightField;
import underhook.core.geo.GridShape;
import underhook.core.geo.Ground;
import underhook.core.geo.LocalFrame;
import underhook.core.geo.PlanePoint;
import underhook.core.job.CrossingRule;
import underhook.core.job.MapFeature;

/** What a way passes over, by hand: a wire at 100 m, a road at 200 m, another road at 300 m, and the first again. */
class PassedTest {
    private static final Ground LEVEL =
            new Ground(
                    LocalFrame.of(new GeoPoint(46.8, -12.0)),
                    GridHeightField.of(
                            new GridShape(-500, -500, 50, 40, 40), (eastM, northM) -> 500),
                    Optional.empty(),
                    0);

    private static MapFeature road(String id, double eastM) {
        return new MapFeature(
                id,
                MapFeature.Kind.ROAD,
                MapFeature.Shape.LINE,
                List.of(
                        LEVEL.frame().toGeo(new PlanePoint(eastM, -300)),
                        LEVEL.frame().toGeo(new PlanePoint(eastM, 300))),
                0,
                CrossingRule.GUARDED,
                OptionalDouble.empty(),
                false,
                "invented");
    }

    @Test
    void what_a_way_passes_over_is_told_in_the_order_in_which_it_does() {
        Passed passed =
                new Passed(
                        List.of(road("far", 300), road("near", 200)),
                        LEVEL,
                        List.of(Wires.northSouth(100, CrossingRule.ALLOWED, 540)));
        List<PlanePoint> way =
                List.of(new PlanePoint(0, 0), new PlanePoint(350, 0), new PlanePoint(250, 50));

        assertThat(passed.along(way))
                .extracting(FlownLeg.Crossed::feature)
                .containsExactly("W1", "near", "far", "far");
    }
}
