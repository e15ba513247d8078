package underhook.planner.odds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import underhook.core.job.Spreads;

class NetworkTest {
    private static final int DAYS = 40_000;

    /** Half a hundredth is more than two standard errors of any chance over so many days. */
    private static final double SAMPLING = 0.0085;

    private static final Spreads.Ratios ZERO_TO_TWO = new Spreads.Ratios(1e-9, 1, 2);

    private static double shareUpTo(NetMaker maker, int moment, double untilS) {
        Network network = maker.make();
        Draws draws = new Draws(maker.pieces(), 0, new SplittableRandom(3));
        double[] timesS = new double[network.moments()];
        int hits = 0;
        for (int day = 0; day < DAYS; day++) {
            network.run(draws.nextFactor(), timesS);
            hits += timesS[moment] <= untilS ? 1 : 0;
        }
        return (double) hits / DAYS;
    }

    private static Edge varying(NetMaker maker, int from, int to) {
        int piece = maker.piece(ZERO_TO_TWO, Piece.Luck.CYCLE);
        return new Edge(from, to, 0, 1, piece, Edge.Kind.ORDER, "");
    }

    /**
     * A symmetric triangle on [0, 2] is the sum of two uniform times on [0, 1], so a chain of three is one of
     * six: P(sum of n at most x) = sum over k of (-1)^k C(n, k) (x - k)^n / n!, IRWIN-HALL.
     */
    @Test
    void a_chain_of_times_ends_as_often_as_their_sum_says() {
        NetMaker maker = new NetMaker();
        int a = maker.moment(1);
        int b = maker.moment(2);
        int c = maker.moment(3);
        maker.add(varying(maker, NetMaker.ZERO, a));
        maker.add(varying(maker, a, b));
        maker.add(varying(maker, b, c));

        for (double x : new double[] {2, 2.5, 3, 3.5, 4.25}) {
            assertThat(shareUpTo(maker, c, x)).isEqualTo(irwinHall(6, x), within(SAMPLING));
        }
    }

    static double irwinHall(int n, double x) {
        double sum = 0;
        double choose = 1;
        double factorial = 1;
        for (int i = 2; i <= n; i++) {
            factorial *= i;
        }
        for (int k = 0; k <= Math.floor(x); k++) {
            sum += (k % 2 == 0 ? 1 : -1) * choose * Math.pow(x - k, n);
            choose = choose * (n - k) / (k + 1);
        }
        return sum / factorial;
    }

    /** DERIVED: the later of two independent times is by then when both are. */
    @Test
    void what_waits_for_two_comes_as_often_as_both_have() {
        NetMaker maker = new NetMaker();
        int a = maker.moment(1);
        int b = maker.moment(1);
        int both = maker.moment(1);
        maker.add(varying(maker, NetMaker.ZERO, a));
        maker.add(varying(maker, NetMaker.ZERO, b));
        maker.add(a, both, 0);
        maker.add(b, both, 0);

        double one = irwinHall(2, 1.25);
        assertThat(shareUpTo(maker, both, 1.25)).isEqualTo(one * one, within(SAMPLING));
    }

    @Test
    void a_short_wait_that_nothing_explains_moves_along_and_a_long_one_stays_by_the_clock() {
        NetMaker maker = new NetMaker();
        int a = maker.moment(100);
        int after = maker.moment(130);
        int late = maker.moment(1000);
        maker.add(NetMaker.ZERO, a, 100);
        maker.add(a, after, 0);
        maker.add(after, late, 0);
        Network network = maker.make();
        double[] timesS = new double[network.moments()];

        network.run(new double[] {1}, timesS);
        assertThat(timesS).containsExactly(0, 100, 130, 1000);
        assertThat(network.edges())
                .filteredOn(edge -> edge.kind() == Edge.Kind.CLOCK)
                .extracting(Edge::to)
                .containsExactly(late);
    }

    @Test
    void a_plan_quicker_than_its_rules_counts_as_planned() {
        NetMaker maker = new NetMaker();
        int a = maker.moment(50);
        maker.add(NetMaker.ZERO, a, 80);
        Network network = maker.make();
        double[] timesS = new double[network.moments()];

        network.run(new double[] {1}, timesS);

        assertThat(timesS[a]).isEqualTo(50);
    }

    @Test
    void a_circle_is_refused() {
        List<Edge> circle = List.of(CrewDay.order(1, 2, 0), CrewDay.order(2, 1, 0));

        assertThatThrownBy(() -> Network.of(3, circle)).hasMessageContaining("circle");
    }
}
