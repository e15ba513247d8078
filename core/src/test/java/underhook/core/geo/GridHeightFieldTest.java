package underhook.core.geo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class GridHeightFieldTest {
    /** Heights of some hundred metres in double arithmetic. */
    private static final double ROUNDING = 1e-9;

    /** Centres at 5, 15, 25 east and 5, 15 north; south row first. */
    private static final GridHeightField SMALL =
            GridHeightField.of(
                    new GridShape(0, 0, 10, 3, 2),
                    List.of(100.0, 110.0, 130.0, 200.0, 220.0, 240.0));

    @Test
    void gives_the_cell_value_at_a_cell_centre() {
        assertThat(SMALL.heightM(5, 5)).isEqualTo(100.0);
        assertThat(SMALL.heightM(25, 5)).isEqualTo(130.0);
        assertThat(SMALL.heightM(25, 15)).isEqualTo(240.0);
    }

    @Test
    void interpolates_between_four_centres() {
        // A quarter of the way east and half of the way north between 100, 110 (south) and 200, 220
        // (north): south 102.5, north 205, middle 153.75.
        assertThat(SMALL.heightM(7.5, 10)).isCloseTo(153.75, within(ROUNDING));
    }

    @Test
    void covers_only_between_the_outer_centres() {
        assertThat(SMALL.covers(5, 5)).isTrue();
        assertThat(SMALL.covers(25, 15)).isTrue();
        assertThat(SMALL.covers(4.99, 5)).isFalse();
        assertThat(SMALL.covers(25.01, 5)).isFalse();
        assertThat(SMALL.covers(5, 15.01)).isFalse();
        assertThat(SMALL.covers(Double.NaN, 5)).isFalse();
        assertThatThrownBy(() -> SMALL.heightM(4, 5)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void has_no_height_where_a_needed_cell_is_unknown() {
        GridHeightField holed = SMALL.withUnknown(1, 1);

        assertThat(holed.covers(10, 10)).isFalse();
        assertThat(holed.covers(20, 10)).isFalse();
        // On the line of the south centres the north row is not needed.
        assertThat(holed.heightM(10, 5)).isCloseTo(105, within(ROUNDING));
        assertThat(SMALL.covers(10, 10)).as("the field it was made from").isTrue();
    }

    @Test
    void counts_every_cell_whose_square_touches_the_disc() {
        GridHeightField peak =
                GridHeightField.of(
                        new GridShape(0, 0, 10, 5, 5), (e, n) -> e > 40 && n > 40 ? 900 : 1);

        // The peak's square reaches from 40 to 50 both ways: its near corner is 14.142 m from (30,
        // 30).
        assertThat(peak.highestWithinM(new PlanePoint(30, 30), 14.13)).isEqualTo(1);
        assertThat(peak.highestWithinM(new PlanePoint(30, 30), 14.15)).isEqualTo(900);
        assertThat(peak.highestWithinM(new PlanePoint(39, 45), 0.5)).isEqualTo(1);
        assertThat(peak.highestWithinM(new PlanePoint(39, 45), 1)).isEqualTo(900);
        assertThat(peak.highestWithinM(new PlanePoint(45, 45), 0)).isEqualTo(900);
    }

    @Test
    void knows_a_disc_only_when_all_its_cells_are_known() {
        GridHeightField holed =
                GridHeightField.of(new GridShape(0, 0, 10, 5, 5), (e, n) -> 1).withUnknown(4, 2);

        assertThat(holed.coversDisc(new PlanePoint(25, 25), 14.9)).isTrue();
        assertThat(holed.coversDisc(new PlanePoint(25, 25), 15)).isFalse();
        assertThat(holed.coversDisc(new PlanePoint(5, 5), 5)).isTrue();
        assertThat(holed.coversDisc(new PlanePoint(5, 5), 5.1)).isFalse();
        assertThatThrownBy(() -> holed.highestWithinM(new PlanePoint(25, 25), 15))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void agrees_with_looking_at_every_cell() {
        Random random = new Random(7);
        GridShape shape = new GridShape(-31, 12, 3, 40, 30);
        GridHeightField field = GridHeightField.of(shape, (e, n) -> random.nextDouble() * 100);
        for (int i = 0; i < 500; i++) {
            double radius = random.nextDouble() * 20;
            PlanePoint centre =
                    new PlanePoint(
                            -31 + radius + random.nextDouble() * (120 - 2 * radius),
                            12 + radius + random.nextDouble() * (90 - 2 * radius));
            double expected = Double.NEGATIVE_INFINITY;
            for (int row = 0; row < 30; row++) {
                for (int column = 0; column < 40; column++) {
                    PlanePoint middle = shape.centreOf(column, row);
                    double dx = Math.max(0, Math.abs(middle.eastM() - centre.eastM()) - 1.5);
                    double dy = Math.max(0, Math.abs(middle.northM() - centre.northM()) - 1.5);
                    if (Math.hypot(dx, dy) <= radius) {
                        expected =
                                Math.max(expected, field.heightM(middle.eastM(), middle.northM()));
                    }
                }
            }

            // The middle of a cell may be off its centre line by a rounding.
            assertThat(field.highestWithinM(centre, radius)).isCloseTo(expected, within(1e-6));
        }
    }

    @Test
    void refuses_a_shape_or_values_that_cannot_be() {
        assertThatThrownBy(() -> new GridShape(0, 0, 0, 1, 1))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new GridShape(0, Double.NaN, 1, 1, 1))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new GridShape(0, 0, 1, 100_000, 100_000))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(
                        () ->
                                GridHeightField.of(
                                        new GridShape(0, 0, 1, 2, 2), Collections.nCopies(3, 0.0)))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(
                        () ->
                                GridHeightField.of(
                                        new GridShape(0, 0, 1, 2, 2), (e, n) -> Double.NaN))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void lies_around_the_origin() {
        GridShape shape = GridShape.around(101, 10);

        assertThat(shape).isEqualTo(new GridShape(-110, -110, 10, 22, 22));
    }

    /** Cells of 10 m from 0 to 50, each as high as its column; the middle of the disc is 5 m from the edge. */
    @Test
    void of_a_disc_known_in_part_the_known_cells_count() {
        GridHeightField field =
                GridHeightField.of(new GridShape(0, 0, 10, 5, 5), (e, n) -> Math.floor(e / 10))
                        .withUnknown(2, 2);

        assertThat(field.findHighestKnownWithinM(new PlanePoint(5, 25), 12)).hasValue(1);
        assertThat(field.findHighestKnownWithinM(new PlanePoint(45, 25), 4)).hasValue(4);
        assertThat(field.findHighestKnownWithinM(new PlanePoint(25, 25), 4)).isEmpty();
        assertThat(field.findHighestKnownWithinM(new PlanePoint(-30, 25), 12)).isEmpty();
        // A corner that the disc barely touches: sqrt(2) times 5.1 m away, 7.3 m round.
        assertThat(field.findHighestKnownWithinM(new PlanePoint(-5.1, -5.1), 7.3)).hasValue(0);
    }
}
