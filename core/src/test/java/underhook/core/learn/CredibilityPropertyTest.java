package underhook.core.learn;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;
import org.junit.jupiter.api.Test;

class CredibilityPropertyTest {
    @Test
    void one_flight_moves_little_and_many_are_believed() {
        Credibility.Group one = new Credibility.Group("a", List.of(Credibility.Sample.of(2)));
        Credibility one1 = Credibility.of(List.of(one)).towardsPlan(10);

        // One of eleven: 1 + 1/11.
        assertThat(one1.groups().get(0).believedRatio()).isCloseTo(1 + 1.0 / 11, within(1e-12));

        List<Credibility.Sample> many = new ArrayList<>();
        for (int i = 0; i < 990; i++) {
            many.add(Credibility.Sample.of(2));
        }
        Credibility much =
                Credibility.of(List.of(new Credibility.Group("a", many))).towardsPlan(10);
        assertThat(much.groups().get(0).believedRatio()).isCloseTo(1.99, within(1e-12));
    }

    @Test
    void what_is_believed_lies_between_the_plan_the_mean_of_all_and_the_groups_own_mean() {
        RandomGenerator random = new SplittableRandom(20260712);
        for (int run = 0; run < 500; run++) {
            Credibility plain = Credibility.of(groups(random));
            Credibility held = plain.towardsPlan(10);
            for (Credibility.Estimate estimate : held.groups()) {
                double low = Math.min(1, Math.min(plain.meanRatio(), estimate.ownRatio()));
                double high = Math.max(1, Math.max(plain.meanRatio(), estimate.ownRatio()));
                assertThat(estimate.believedRatio()).isBetween(low - 1e-9, high + 1e-9);
                assertThat(estimate.credibilityFactor()).isBetween(0.0, 1.0);
            }
        }
    }

    @Test
    void alike_groups_are_held_to_be_alike() {
        List<Credibility.Sample> samples =
                List.of(Credibility.Sample.of(0.9), Credibility.Sample.of(1.3));
        Credibility found =
                Credibility.of(
                        List.of(
                                new Credibility.Group("a", samples),
                                new Credibility.Group("b", samples)));

        assertThat(found.betweenFactor()).isZero();
        assertThat(found.groups()).allSatisfy(g -> assertThat(g.believedRatio()).isEqualTo(1.1));
    }

    private static List<Credibility.Group> groups(RandomGenerator random) {
        List<Credibility.Group> groups = new ArrayList<>();
        int n = 1 + random.nextInt(6);
        for (int i = 0; i < n; i++) {
            double mean = 0.7 + random.nextDouble();
            List<Credibility.Sample> samples = new ArrayList<>();
            int count = 1 + random.nextInt(9);
            for (int k = 0; k < count; k++) {
                samples.add(Credibility.Sample.of(mean * (0.8 + 0.4 * random.nextDouble())));
            }
            groups.add(new Credibility.Group("g" + i, samples));
        }
        return groups;
    }
}
