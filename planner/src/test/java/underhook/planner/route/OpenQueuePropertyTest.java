package underhook.planner.route;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.junit.jupiter.api.Test;
import underhook.testkit.SeededSamples;

class OpenQueuePropertyTest {
    private record Entry(int number, double costS) {}

    @Test
    void gives_numbers_by_cost_then_by_number() {
        SeededSamples.of(49)
                .forEach(
                        100,
                        samples -> {
                            OpenQueue queue = new OpenQueue();
                            List<Entry> all = new ArrayList<>();
                            int count = samples.wholeBetween(1, 300);
                            for (int i = 0; i < count; i++) {
                                // Few whole costs, so that many are equal.
                                Entry entry = new Entry(i, samples.wholeBetween(0, 20));
                                all.add(entry);
                                queue.add(entry.number(), entry.costS());
                            }
                            all.sort(
                                    Comparator.comparingDouble(Entry::costS)
                                            .thenComparingInt(Entry::number));

                            for (Entry entry : all) {
                                assertThat(queue.leastS()).isEqualTo(entry.costS());
                                assertThat(queue.poll()).isEqualTo(entry.number());
                            }
                            assertThat(queue.isEmpty()).isTrue();
                        });
    }
}
