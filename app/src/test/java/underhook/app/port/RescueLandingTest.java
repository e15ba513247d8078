package underhook.app.port;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.geo.GeoPoint;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.job.PlaceKind;
import underhook.core.plan.Plan;
import underhook.core.plan.Summary;

/** Where nobody may be landed no rescue machine is sent either. No source outside. */
class RescueLandingTest {
    private static final Instant SEVEN = Instant.parse("2026-09-08T07:00:00Z");

    private static Place place(PlaceKind kind, boolean agreed) {
        return new Place(
                new PlaceId("K"),
                kind,
                "",
                new GeoPoint(46.8, -12),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                0,
                0,
                1,
                agreed,
                true,
                false,
                false,
                List.of(),
                "");
    }

    private static Optional<Plan> plan(FindingCode code, String subject) {
        return Optional.of(
                new Plan(
                        "plan-1",
                        "job",
                        new Plan.Made(SEVEN, 1, 10, "Underhook"),
                        new Summary(
                                0,
                                SEVEN,
                                new Summary.Counts(0, 0, 0),
                                Summary.Bounds.NONE,
                                false,
                                Optional.empty(),
                                List.of(),
                                Optional.empty()),
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(Finding.of(code, Severity.NOTE, subject, "rules", "Refused.")),
                        List.of(),
                        List.of(),
                        List.of(),
                        Optional.empty()));
    }

    @Test
    void a_landing_that_the_plan_refused_is_none() {
        Place landing = place(PlaceKind.LANDING, true);

        assertThat(RescuePoint.mayLand(landing, plan(FindingCode.LANDING_TOO_STEEP, "K")))
                .isFalse();
        assertThat(RescuePoint.mayLand(landing, plan(FindingCode.LANDING_IN_TREES, "K"))).isFalse();
        assertThat(RescuePoint.mayLand(landing, plan(FindingCode.LANDING_TOO_STEEP, "M"))).isTrue();
        assertThat(RescuePoint.mayLand(landing, plan(FindingCode.LANDING_UNSEEN, "K"))).isTrue();
        assertThat(RescuePoint.mayLand(landing, Optional.empty())).isTrue();
    }

    @Test
    void sites_and_what_no_owner_agreed_to_are_none_either() {
        assertThat(RescuePoint.mayLand(place(PlaceKind.SITE, true), Optional.empty())).isFalse();
        assertThat(RescuePoint.mayLand(place(PlaceKind.LAYDOWN, false), Optional.empty()))
                .isFalse();
    }
}
