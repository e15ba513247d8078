package underhook.planner.order;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import underhook.core.finding.Finding;
import underhook.core.finding.Severity;
import underhook.core.job.Confirmation;

/** Dates by hand. */
class ConfirmationsTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 9, 8);

    private static Confirmation look(String subject, int day, String by) {
        return new Confirmation(subject, "seen", by, LocalDate.of(2026, 9, day), "hazards.csv");
    }

    private final Confirmations register =
            new Confirmations(
                    TODAY,
                    List.of(
                            look("W1", 8, "AB"),
                            look("W1", 3, "CD"),
                            look("W2", 1, "AB"),
                            look("W2", 7, "EF"),
                            look("W2", 7, "GH")));

    @Test
    void the_latest_look_counts_in_whatever_order_the_lines_stand() {
        assertThat(register.findLatest("W1").orElseThrow().by()).isEqualTo("AB");
        assertThat(register.findLatest("W2").orElseThrow().on()).isEqualTo("2026-09-07");
    }

    @Test
    void of_two_looks_on_one_day_the_later_line_counts() {
        assertThat(register.findLatest("W2").orElseThrow().by()).isEqualTo("GH");
    }

    @Test
    void only_a_look_on_the_day_counts_as_today() {
        assertThat(register.findToday("W1")).isPresent();
        assertThat(register.findToday("W2")).isEmpty();
        assertThat(register.findToday("W3")).isEmpty();
    }

    @Test
    void says_what_was_not_looked_at_today_once_and_when_it_was_last() {
        assertThat(register.findUnconfirmed("W1", "wires.geojson", "S1 is 9 m away")).isEmpty();
        assertThat(register.findUnconfirmed("W2", "wires.geojson", "S1 is 9 m away"))
                .map(Finding::message)
                .hasValue(
                        "Nobody has confirmed W2 today, last on 2026-09-07 by GH; S1 is 9 m away.");
        assertThat(register.findUnconfirmed("W2", "wires.geojson", "S2 is 5 m away")).isEmpty();
        // As printed: "Nobody has looked at W3 yet; ... Found never, limit 2026-09-08."
        assertThat(register.findUnconfirmed("W3", "wires.geojson", "S1 is 9 m away"))
                .map(one -> one.message() + " " + one.value())
                .hasValue("Nobody has looked at W3 yet; S1 is 9 m away. never");
    }

    @Test
    void what_nobody_looked_at_today_stays_on_the_list_though_nothing_comes_near() {
        register.findUnconfirmed("W9", "wires.geojson", "the place S1 is near");

        List<Finding> rest = register.listRest();

        assertThat(rest).extracting(Finding::subject).containsExactly("W2");
        assertThat(rest).extracting(Finding::severity).containsOnly(Severity.NOTE);
        assertThat(register.listRest()).isEmpty();
    }
}
