package underhook.planner.order;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import underhook.core.geo.PlanePoint;

/** Crossings drawn and read off squared paper. */
class WireEndTest {
    private static PlanePoint at(double eastM, double northM) {
        return new PlanePoint(eastM, northM);
    }

    /** From south to north, ending at (0, 300). */
    private final WireEnd north = new WireEnd(at(0, 0), at(0, 300));

    @Test
    void a_way_round_the_end_crosses_the_wire_carried_on() {
        assertThat(north.beyondM(List.of(at(-200, 0), at(-100, 400), at(100, 440), at(200, 0))))
                .isCloseTo(120, within(1e-9));
    }

    @Test
    void the_crossing_nearest_to_the_end_counts() {
        assertThat(north.beyondM(List.of(at(-50, 900), at(50, 900), at(50, 350), at(-50, 350))))
                .isCloseTo(50, within(1e-9));
    }

    @Test
    void over_the_wire_itself_beside_it_or_short_of_it_is_not_round_its_end() {
        assertThat(north.beyondM(List.of(at(-200, 100), at(200, 100)))).isInfinite();
        assertThat(north.beyondM(List.of(at(50, 0), at(50, 900)))).isInfinite();
        assertThat(north.beyondM(List.of(at(-200, 500), at(-10, 500)))).isInfinite();
    }

    @Test
    void an_aslant_end_goes_on_aslant() {
        // 3-4-5: from (300, 400) on to (360, 480) is 100 m.
        WireEnd end = new WireEnd(at(0, 0), at(300, 400));
        assertThat(end.beyondM(List.of(at(0, 480), at(900, 480)))).isCloseTo(100, within(1e-9));
    }

    @Test
    void both_ends_are_open_unless_something_stands_there() {
        List<PlanePoint> wire = List.of(at(0, 0), at(0, 150), at(0, 300));
        assertThat(WireEnd.listOpen(wire, List.of())).hasSize(2);
        assertThat(WireEnd.listOpen(wire, List.of(List.of(at(30, 310))))).hasSize(1);
        assertThat(WireEnd.listOpen(wire, List.of(List.of(at(70, 300))))).hasSize(2);
        // Another wire passes by the end between two supports that are both far.
        assertThat(WireEnd.listOpen(wire, List.of(List.of(at(-400, 320), at(400, 320)))))
                .containsExactly(new WireEnd(at(0, 150), at(0, 0)));
    }
}
