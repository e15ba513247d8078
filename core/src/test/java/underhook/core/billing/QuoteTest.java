package underhook.core.billing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Expected figures are worked by hand or by drawing. */
class QuoteTest {
    private static final Tariff TARIFF =
            new Tariff(
                    "by the minute",
                    "EUR",
                    0,
                    List.of(
                            new Tariff.Item(
                                    "flying",
                                    Tariff.Basis.FLYING_TIME,
                                    Tariff.Rounding.STARTED_MINUTE,
                                    3500)));

    private static Quote.Day day(int lifts, double spreadRatio, double sureFactor) {
        return new Quote.Day(
                Collections.nCopies(lifts, new Quote.Lift(300, 1.1, spreadRatio, sureFactor)),
                2,
                0,
                600,
                0,
                0.05);
    }

    @Test
    void sums_independent_lifts() {
        // By hand: 36 lifts of 300 s at 1.1; one spread by 60 s, all by 60 x 6 = 360 s; 1.2816 of
        // it.
        Quote quote = Quote.of(day(36, 0.2, 1e18), TARIFF, new Quote.Terms(1, 1, 0));

        assertThat(quote.flyingS().likelyS()).isCloseTo(36 * 330.0, within(1e-6));
        assertThat(quote.flyingS().highS() - quote.flyingS().likelyS())
                .isCloseTo(1.2816 * 360, within(1e-3));
        assertThat(quote.engineS().lowS()).isCloseTo(36 * 330.0 + 600 - 1.2816 * 360, within(1e-3));
        // 11,880 s are 198 minutes at 35.00.
        assertThat(quote.cents().likely()).isEqualTo(198 * 3500);
        assertThat(quote.waitingDays()).isEqualTo(new Quote.Counts(0, 0, 0));
    }

    @Test
    void a_mean_that_few_flights_speak_for_moves_all_lifts_together() {
        // By hand: 60 s x 36 lifts over the root of 9 flights are 720 s, with 360 s of their own.
        Quote quote = Quote.of(day(36, 0.2, 9), TARIFF, new Quote.Terms(1, 1, 0));

        assertThat(quote.flyingS().highS() - quote.flyingS().likelyS())
                .isCloseTo(1.2816 * Math.hypot(720, 360), within(1e-3));
    }

    @Test
    void one_day_waits_as_the_geometric_distribution_says() {
        // By hand: chance of at most k lost days is 1 - 0.4^(k + 1): 0.6, 0.84, 0.936.
        Quote.Terms terms = new Quote.Terms(1, 0.6, 10_000);
        assertThat(Quote.lostDays(terms, 0.5)).isZero();
        assertThat(Quote.lostDays(terms, 0.8)).isEqualTo(1);
        assertThat(Quote.lostDays(terms, 0.9)).isEqualTo(2);
    }

    @Test
    void several_days_wait_as_drawing_says() {
        Quote.Terms terms = new Quote.Terms(5, 0.55, 10_000);
        SplittableRandom random = new SplittableRandom(8);
        int most = Quote.lostDays(terms, 0.9);
        int within = 0;
        int below = 0;
        for (int i = 0; i < 20_000; i++) {
            int lost = 0;
            for (int flown = 0; flown < 5; ) {
                if (random.nextDouble() < 0.55) {
                    flown++;
                } else {
                    lost++;
                }
            }
            within += lost <= most ? 1 : 0;
            below += lost < most ? 1 : 0;
        }
        // Three times the sampling error of a share of 20,000 is below 0.7 %.
        assertThat(within / 20_000.0).isGreaterThan(0.9 - 0.007);
        assertThat(below / 20_000.0).isLessThan(0.9 + 0.007);
    }

    @Test
    void lost_days_cost_what_they_cost() {
        Quote quote = Quote.of(day(1, 0, 1), TARIFF, new Quote.Terms(3, 0.5, 100_000));
        // 330 s are 6 started minutes on each of three days.
        assertThat(quote.cents().likely())
                .isEqualTo(3 * 6 * 3500 + quote.waitingDays().likely() * 100_000);
        assertThat(quote.cents().high()).isGreaterThan(quote.cents().likely());
    }
}
