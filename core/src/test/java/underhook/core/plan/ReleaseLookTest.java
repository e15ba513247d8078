package underhook.core.plan;

import static java.util.Map.entry;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import underhook.core.plan.ReleaseLook.Part;
import underhook.core.plan.ReleaseLook.Stretch;
import underhook.core.plan.ReleaseLook.Use;

class ReleaseLookTest {
    /** @source by hand: 190 and 205 m share the tenth from 0.2 to 0.3 km outward, 311 and 700 m none */
    @Test
    void parts_of_one_thing_that_share_a_tenth_of_a_kilometre_are_one() {
        ReleaseLook look =
                new ReleaseLook(
                        List.of(
                                new Stretch(Use.CLOSED, 120.4, 190, 5, List.of("LL1")),
                                new Stretch(Use.OPEN, 190, 205, 5, List.of()),
                                new Stretch(Use.CLOSED, 205, 310.2, 5, List.of("LL1", "R2")),
                                new Stretch(Use.GUARDED, 310.2, 700, 5, List.of("R2")),
                                new Stretch(Use.CLOSED, 700, 750, 5, List.of("LL1"))),
                        5,
                        50,
                        80);

        assertThat(look.partsByThing(Use.CLOSED))
                .containsExactly(
                        entry("LL1", List.of(new Part(120, 311), new Part(700, 750))),
                        entry("R2", List.of(new Part(205, 311))));
        assertThat(look.partsByThing(Use.GUARDED))
                .containsExactly(entry("R2", List.of(new Part(310, 700))));
    }
}
