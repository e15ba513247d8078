package underhook.planner.route;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import underhook.core.fall.Fall;
import underhook.core.fall.Patch;
import underhook.core.geo.GridHeightField;
import underhook.core.geo.GridShape;
import underhook.core.geo.HeightField;
import underhook.core.geo.PlanePoint;
import underhook.core.job.LoadShape;

class PatchesPropertyTest {
    private static final List<LoadShape> SHAPES = List.of(LoadShape.values());

    private static double between(SplittableRandom random, double low, double high) {
        return low + random.nextDouble() * (high - low);
    }

    /** A plane falling that much to the east. */
    private static HeightField slope(double fallRatio) {
        return GridHeightField.of(
                new GridShape(-2000, -2000, 20, 200, 200), (east, north) -> -fallRatio * east);
    }

    @Test
    void the_box_without_falls_holds_the_patch_with_them() {
        SplittableRandom random = new SplittableRandom(31);
        for (int i = 0; i < 120; i++) {
            Patches patches = new Patches(slope(between(random, -0.6, 0.6)));
            double massKg = between(random, 20, 700);
            double areaM2 = between(random, 0.1, 4);
            Cargo cargo =
                    new Cargo(
                            new Fall.Body(massKg, areaM2, 1.2),
                            new Fall.Body(massKg * 1.3, areaM2 / 3, 1.0),
                            SHAPES.get(random.nextInt(SHAPES.size())),
                            between(random, 10, 50),
                            between(random, 11, 60),
                            between(random, 15, 30),
                            between(random, 0, 0.5),
                            0);
            LegWind wind =
                    new LegWind(
                            between(random, 0, 6.28),
                            between(random, 0, 15),
                            between(random, 0, 6));
            double fastMPerS = between(random, 3, 35);
            Station station =
                    new Station(
                            new PlanePoint(0, 0),
                            between(random, 0, 6.28),
                            cargo.underHookM() + between(random, 5, 300),
                            fastMPerS,
                            between(random, 0, fastMPerS),
                            1,
                            100,
                            110);
            Patches.Below below = patches.below(station, cargo).orElseThrow();

            Patch outer = patches.of(cargo, wind).outer(station, below);
            Patch held = patches.of(cargo, wind).heldPatch(station, below);

            assertThat(outer.backM()).as("case " + i).isLessThanOrEqualTo(held.backM());
            assertThat(outer.forwardM()).as("case " + i).isGreaterThanOrEqualTo(held.forwardM());
            assertThat(outer.leftM()).as("case " + i).isGreaterThanOrEqualTo(held.leftM());
            assertThat(outer.rightM()).as("case " + i).isGreaterThanOrEqualTo(held.rightM());
        }
    }
}
