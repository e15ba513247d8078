package underhook.planner.odds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import underhook.core.job.Spreads;

/** Values by hand from the triangle's area. */
class PieceTest {
    private static final Piece PIECE = Piece.of(new Spreads.Ratios(1, 2, 5), Piece.Luck.CYCLE);

    @Test
    void a_triangle_is_cut_where_its_area_says() {
        // Up to the peak lies a quarter of 4 wide; (x - 1)² / 4 is the area up to x before it.
        assertThat(PIECE.atFactor(0)).isEqualTo(1);
        assertThat(PIECE.atFactor(0.0625)).isEqualTo(1.5, within(1e-12));
        assertThat(PIECE.atFactor(0.25)).isEqualTo(2, within(1e-12));
        // (5 - x)² / 12 is the area from x on behind it.
        assertThat(PIECE.atFactor(1 - 1.0 / 3)).isEqualTo(3, within(1e-12));
    }

    @Test
    void nothing_varies_where_all_three_points_are_one() {
        Piece steady = Piece.of(Spreads.Ratios.NONE, Piece.Luck.CYCLE);

        assertThat(steady.atFactor(0)).isEqualTo(1);
        assertThat(steady.atFactor(0.999)).isEqualTo(1);
    }

    @Test
    void draws_have_the_mean_and_variance_of_a_triangle() {
        SplittableRandom random = new SplittableRandom(7);
        int draws = 200_000;
        double sum = 0;
        double squares = 0;
        for (int i = 0; i < draws; i++) {
            double drawn = PIECE.atFactor(random.nextDouble());
            sum += drawn;
            squares += drawn * drawn;
        }
        double mean = sum / draws;

        // Mean (a + b + c) / 3; variance (a² + b² + c² - ab - ac - bc) / 18. Five standard errors.
        assertThat(mean).isEqualTo(8.0 / 3, within(0.01));
        assertThat(squares / draws - mean * mean).isEqualTo(13.0 / 18, within(0.02));
    }
}
