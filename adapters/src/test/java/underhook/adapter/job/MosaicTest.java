package underhook.adapter.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import underhook.core.geo.GridHeightField;
import underhook.core.geo.GridShape;
import underhook.core.geo.HeightField;
import underhook.core.geo.PlanePoint;
import underhook.testkit.SeededSamples;

/** Tiles against the one grid that they were cut from. */
class MosaicTest {
    private static double hills(double east, double north) {
        return 100 + 30 * Math.sin(east / 37) + 20 * Math.cos(north / 23);
    }

    private static final GridHeightField WHOLE =
            GridHeightField.of(new GridShape(-100, -100, 10, 20, 20), MosaicTest::hills);

    /** Four quarters of the whole, 10 by 10 cells of 10 m each. */
    private static List<HeightField> quarters() {
        List<HeightField> tiles = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            tiles.add(
                    GridHeightField.of(
                            new GridShape(i % 2 == 0 ? -100 : 0, i < 2 ? -100 : 0, 10, 10, 10),
                            MosaicTest::hills));
        }
        return tiles;
    }

    private final HeightField mosaic = Mosaic.of(quarters());

    @Test
    void a_point_in_the_gap_of_a_seam_has_the_height_of_the_one_grid() {
        assertThat(mosaic.heightM(3, 37)).isCloseTo(WHOLE.heightM(3, 37), within(1e-5));
        assertThat(mosaic.heightM(-41, -2)).isCloseTo(WHOLE.heightM(-41, -2), within(1e-5));
        assertThat(mosaic.heightM(2, -3)).isCloseTo(WHOLE.heightM(2, -3), within(1e-5));
        assertThat(mosaic.heightM(0, 0)).isCloseTo(WHOLE.heightM(0, 0), within(1e-5));
    }

    @Test
    void covers_the_same_points_as_the_one_grid_and_gives_their_height() {
        SeededSamples.of(5)
                .forEach(
                        400,
                        sample -> {
                            double east = sample.between(-99, 99);
                            double north = sample.between(-99, 99);
                            boolean isCovered = WHOLE.covers(east, north);
                            assertThat(mosaic.covers(east, north)).isEqualTo(isCovered);
                            if (isCovered) {
                                // A millionth of a cell, at a slope of at most 1.7.
                                assertThat(mosaic.heightM(east, north))
                                        .isCloseTo(WHOLE.heightM(east, north), within(1e-5));
                            }
                        });
    }

    @Test
    void of_a_disc_over_the_edge_the_known_cells_of_all_rasters_count() {
        PlanePoint edge = new PlanePoint(-98, 3);

        assertThat(mosaic.findHighestWithinM(edge, 25)).isEmpty();
        assertThat(mosaic.findHighestKnownWithinM(edge, 25))
                .isEqualTo(WHOLE.findHighestKnownWithinM(edge, 25))
                .isPresent();
    }

    @Test
    void a_disc_across_seams_errs_high_by_no_more_than_a_disc_a_little_wider() {
        SeededSamples.of(6)
                .forEach(
                        300,
                        sample -> {
                            PlanePoint centre =
                                    new PlanePoint(
                                            sample.between(-60, 60), sample.between(-60, 60));
                            double radius = sample.between(0, 28);
                            assertThat(mosaic.coversDisc(centre, radius)).isTrue();
                            // Widened by a quarter of a cell, and a tenth of the piece around it.
                            assertThat(mosaic.highestWithinM(centre, radius))
                                    .isBetween(
                                            WHOLE.highestWithinM(centre, radius),
                                            WHOLE.highestWithinM(centre, 1.2 * radius + 4));
                        });
    }

    @Test
    void within_one_tile_the_tile_alone_answers() {
        HeightField tile = quarters().get(3);
        PlanePoint centre = new PlanePoint(44, 51);

        assertThat(mosaic.highestWithinM(centre, 30)).isEqualTo(tile.highestWithinM(centre, 30));
        assertThat(mosaic.heightM(44, 51)).isEqualTo(tile.heightM(44, 51));
    }

    @Test
    void a_single_peak_beside_the_seam_is_found_from_the_other_side() {
        GridHeightField west =
                GridHeightField.of(new GridShape(-100, -50, 10, 10, 10), (east, north) -> 1);
        GridHeightField east =
                GridHeightField.of(
                        new GridShape(0, -50, 10, 10, 10), (x, y) -> x == 5 && y == 5 ? 900 : 1);
        HeightField both = Mosaic.of(List.of(west, east));

        assertThat(both.highestWithinM(new PlanePoint(-20, 5), 20.01)).isEqualTo(900);
        assertThat(both.highestWithinM(new PlanePoint(-20, 5), 16)).isEqualTo(1);
    }

    @Test
    void what_no_tile_has_is_not_covered() {
        HeightField three = Mosaic.of(quarters().subList(0, 3));
        assertThat(three.coversDisc(new PlanePoint(-1, -1), 30)).isFalse();
        assertThat(three.coversDisc(new PlanePoint(-50, -1), 30)).isTrue();
        assertThat(three.covers(2, 3)).isFalse();

        List<HeightField> holed = quarters();
        holed.set(3, ((GridHeightField) holed.get(3)).withUnknown(0, 0));
        assertThat(Mosaic.of(holed).coversDisc(new PlanePoint(-1, -1), 12)).isFalse();
        assertThat(Mosaic.of(holed).covers(3, 4)).isFalse();

        HeightField apart =
                Mosaic.of(
                        List.of(
                                quarters().get(0),
                                GridHeightField.of(
                                        new GridShape(2, -100, 10, 10, 10), MosaicTest::hills)));
        assertThat(apart.coversDisc(new PlanePoint(1, -50), 20)).isFalse();
        assertThat(apart.covers(1, -50)).isFalse();
    }
}
