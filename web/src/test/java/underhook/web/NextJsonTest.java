package underhook.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import underhook.core.plan.ReleaseLook;
import underhook.core.plan.ReleaseLook.Stretch;
import underhook.core.plan.ReleaseLook.Use;

class NextJsonTest {
    /** @source by hand: both things are told for the part that they share, LL1 for one of its own far behind */
    @Test
    void things_closed_over_the_same_part_are_told_together_in_the_order_flown() {
        ReleaseLook look =
                new ReleaseLook(
                        List.of(
                                new Stretch(Use.CLOSED, 10.5, 90.2, 5, List.of("LL1", "R2")),
                                new Stretch(Use.OPEN, 90.2, 500, 20, List.of()),
                                new Stretch(Use.CLOSED, 500, 600, 5, List.of("LL1"))),
                        5,
                        50,
                        80);

        assertThat(NextJson.closed(look))
                .hasToString(
                        "[{\"what\":\"LL1, R2\",\"fromM\":10,\"toM\":91},"
                                + "{\"what\":\"LL1\",\"fromM\":500,\"toM\":600}]");
    }
}
