package underhook.adapter.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class LabelsTest {
    private static final Labels.Box FRAME = new Labels.Box(0, 0, 600, 400);

    private static List<Labels.Placed> place(int count, Sheet.Dot at) {
        Labels labels = new Labels(FRAME);
        labels.keepFree(new Labels.Box(at.x() - 5, at.y() - 5, 10, 10));
        List<Labels.Placed> placed = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            placed.add(
                    labels.place(new Labels.Wish("S" + i, Face.STRONG, at, new Sheet.Dot(24, 11))));
        }
        return placed;
    }

    @Test
    void thirty_names_of_one_spot_all_stand_apart() {
        List<Labels.Placed> placed = place(30, new Sheet.Dot(300, 200));

        assertThat(placed).hasSize(30);
        for (int i = 0; i < placed.size(); i++) {
            for (int j = 0; j < i; j++) {
                assertThat(placed.get(i).box().overlap(placed.get(j).box())).isZero();
            }
        }
        assertThat(placed.get(29).away()).as("far ones have a leader line").isTrue();
    }

    @Test
    void a_name_in_the_corner_stays_on_the_map() {
        for (Labels.Placed one : place(8, new Sheet.Dot(599, 1))) {
            assertThat(FRAME.holds(one.box())).isTrue();
        }
    }
}
