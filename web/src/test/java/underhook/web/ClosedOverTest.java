package underhook.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import underhook.core.geo.GeoPoint;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;
import underhook.core.plan.Leg;
import underhook.core.plan.PathPoint;
import underhook.core.plan.ReleaseLook;
import underhook.core.plan.ReleaseLook.Stretch;
import underhook.core.plan.ReleaseLook.Use;

class ClosedOverTest {
    /** @source by hand: tenths of a kilometre, outward, as the pilot's card tells them */
    @Test
    void stretches_over_one_thing_that_share_a_tenth_of_a_kilometre_are_one() {
        Leg leg =
                looked(
                        new Stretch(Use.CLOSED, 120.4, 190, 5, List.of("LL1")),
                        new Stretch(Use.OPEN, 190, 205, 5, List.of()),
                        new Stretch(Use.CLOSED, 205, 310.2, 5, List.of("LL1", "R2")),
                        new Stretch(Use.CLOSED, 700, 750, 5, List.of("LL1")));

        assertThat(ClosedOver.of(leg))
                .containsExactly(
                        new ClosedOver("LL1", 120, 311),
                        new ClosedOver("R2", 205, 311),
                        new ClosedOver("LL1", 700, 750));
    }

    @Test
    void things_with_the_same_ends_are_told_together() {
        Leg leg = looked(new Stretch(Use.CLOSED, 10, 90, 5, List.of("R1", "R2")));

        assertThat(ClosedOver.of(leg)).containsExactly(new ClosedOver("R1, R2", 10, 90));
    }

    private static Leg looked(Stretch... stretches) {
        return new Leg(
                        List.of(new LoadId("L1")),
                        new PlaceId("A"),
                        new PlaceId("S1"),
                        List.of(
                                new PathPoint(new GeoPoint(0, 0), 300),
                                new PathPoint(new GeoPoint(0, 1), 300)),
                        1000,
                        50,
                        40,
                        10,
                        20,
                        List.of(),
                        List.of(),
                        Leg.Looks.NONE)
                .withRelease(new ReleaseLook(List.of(stretches), 5, 50, 80));
    }
}
