package underhook.app.replan;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import org.junit.jupiter.api.Test;

class ProposalTest {
    private static final Instant NINE = Instant.parse("2026-09-08T09:00:00Z");

    @Test
    void two_orders_of_one_time_have_each_an_id_of_its_own() {
        String late = Proposal.id(NINE, "crew P late");

        assertThat(late)
                .startsWith("plan-20260908-090000-")
                .isEqualTo(Proposal.id(NINE, "crew P late"));
        assertThat(Proposal.id(NINE, "crew Q late")).isNotEqualTo(late);
        assertThat(Proposal.isOrder(late)).isTrue();
    }
}
