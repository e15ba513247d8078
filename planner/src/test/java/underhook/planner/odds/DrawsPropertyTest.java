package underhook.planner.odds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import underhook.core.job.Spreads;

class DrawsPropertyTest {
    private static final int DAYS = 100_000;
    private static final Piece PIECE = Piece.of(new Spreads.Ratios(0.5, 1, 1.5), Piece.Luck.CYCLE);

    /** Two pieces of one luck: both take the day's with the square of the share, else they are strangers. */
    @Test
    void times_of_a_day_are_alike_as_often_as_they_share_its_luck() {
        for (double share : new double[] {0, 0.5, 0.8, 1}) {
            Draws draws = new Draws(List.of(PIECE, PIECE), share, new SplittableRandom(11));
            double products = 0;
            double squares = 0;
            for (int i = 0; i < DAYS; i++) {
                double[] day = draws.nextFactor();
                products += (day[0] - 1) * (day[1] - 1);
                squares += (day[0] - 1) * (day[0] - 1);
            }
            // Variance of the triangle 1/24; five standard errors.
            assertThat(squares / DAYS).as("share " + share).isEqualTo(1.0 / 24, within(0.001));
            assertThat(products / squares)
                    .as("share " + share)
                    .isEqualTo(share * share, within(0.02));
        }
    }

    @Test
    void the_same_seed_draws_the_same_days() {
        Draws one = new Draws(List.of(PIECE, PIECE), 0.5, new SplittableRandom(5));
        Draws other = new Draws(List.of(PIECE, PIECE), 0.5, new SplittableRandom(5));

        for (int i = 0; i < 100; i++) {
            assertThat(one.nextFactor()).containsExactly(other.nextFactor());
        }
    }
}
