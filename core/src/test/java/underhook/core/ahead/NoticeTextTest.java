package underhook.core.ahead;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import underhook.core.ahead.Notice.Kind;
import underhook.core.ahead.Notice.Unread;
import underhook.core.ahead.Notice.Validity;

/** The two whole notices are the printed examples of ICAO Annex 15 and Doc 8126, from memory. */
class NoticeTextTest {
    private static final String TAXIWAY =
            """
            (A1234/06 NOTAMR A1212/06
            Q)EGTT/QMXLC/IV/NBO/A/000/999/5129N00028W005
            A)EGLL B)0609050500 C)0704300500
            E)DUE WIP TWY B SOUTH CLSD BTN 'F' AND 'R'. TWY 'R' CLSD BTN 'A' AND
            'B' AND DIVERTED VIA NEW GREEN CL AND BLUE EDGE LGT. CTN ADZ)
            """;
    private static final String DANGER_AREA =
            """
            (A0623/11 NOTAMN
            Q) EGXX/QRDCA/IV/NBO/W/000/400/5510N00520W050
            A) EGTT/EGPX B) 1104030730 C) 1104281500
            D) APR 03 07 12 21 24 AND 28 0730 TO 1500
            E) DANGER AREA DXX IS ACTIVE
            F) GND G) 12200M (40 000FT) MSL)
            """;

    private static Notice one(String text) {
        List<Notice> all = NoticeText.read(text);
        assertThat(all).hasSize(1);
        return all.get(0);
    }

    @Test
    void reads_the_printed_examples() {
        Notice taxiway = one(TAXIWAY);
        Notice area = one(DANGER_AREA);

        assertThat(taxiway.number()).isEqualTo("A1234/06");
        assertThat(taxiway.kind()).isEqualTo(Kind.REPLACES);
        assertThat(taxiway.refersTo()).isEqualTo("A1212/06");
        assertThat(taxiway.subject()).isEqualTo("QMXLC");
        assertThat(taxiway.levels()).isEqualTo("000/999");
        assertThat(taxiway.circle().orElseThrow().centre().latDeg())
                .isCloseTo(51 + 29 / 60.0, within(1e-9));
        assertThat(taxiway.circle().orElseThrow().centre().lonDeg())
                .isCloseTo(-28 / 60.0, within(1e-9));
        assertThat(taxiway.circle().orElseThrow().radiusM()).isCloseTo(9260, within(1e-6));
        assertThat(taxiway.validity())
                .contains(
                        new Validity(
                                Instant.parse("2006-09-05T05:00:00Z"),
                                Optional.of(Instant.parse("2007-04-30T05:00:00Z")),
                                false));
        assertThat(taxiway.unread()).isEmpty();
        assertThat(area.kind()).isEqualTo(Kind.NEW);
        assertThat(area.schedule()).isEqualTo("APR 03 07 12 21 24 AND 28 0730 TO 1500");
        assertThat(area.circle().orElseThrow().radiusM()).isCloseTo(92_600, within(1e-6));
        assertThat(area.raw()).endsWith("MSL)");
        assertThat(area.unread()).isEmpty();
    }

    @Test
    void loses_no_word_of_a_pasted_page() {
        String page =
                "BULLETIN OF THE DAY\n\n"
                        + TAXIWAY
                        + "\nsee also the chart\n"
                        + DANGER_AREA
                        + "END\n";

        List<Notice> all = NoticeText.read(page);

        assertThat(all)
                .extracting(Notice::nameOrLine)
                .containsExactly("line 1", "A1234/06", "line 9", "A0623/11", "line 16");
        String kept = all.stream().map(Notice::raw).collect(Collectors.joining(" "));
        assertThat(kept.replaceAll("\\s+", " ")).isEqualTo(page.strip().replaceAll("\\s+", " "));
    }

    @Test
    void ends_a_notice_without_brackets_at_a_blank_line() {
        String bare = TAXIWAY.replace("(A1234", "A1234").replace("ADZ)", "ADZ");

        List<Notice> all = NoticeText.read(bare + "\n!XYZ 01/234 SOMETHING ELSE\n");

        assertThat(all).extracting(Notice::kind).containsExactly(Kind.REPLACES, Kind.NONE);
        assertThat(all.get(1).unread())
                .extracting(Unread::line, Unread::value)
                .containsExactly(tuple(7, "!XYZ 01/234 SOMETHING ELSE"));
    }

    @Test
    void notices_without_brackets_begin_where_blank_lines_end() {
        String bare = DANGER_AREA.replace("(A0623", "A0623").replace("MSL)", "MSL");

        List<Notice> all = NoticeText.read(TAXIWAY + "\n\n\t" + bare + "\n\n" + bare);

        assertThat(all)
                .extracting(Notice::number)
                .containsExactly("A1234/06", "A0623/11", "A0623/11");
        assertThat(all).allMatch(notice -> notice.unread().isEmpty());
    }

    @Test
    void a_head_does_not_swallow_the_one_below_it() {
        List<Notice> all = NoticeText.read("A0100/26 NOTAMN\n" + TAXIWAY.replace("(A", "A"));

        assertThat(all).extracting(Notice::number).containsExactly("A0100/26", "A1234/06");
        assertThat(all.get(0).unread()).extracting(Unread::item).contains("Q", "B", "E");
    }

    @Test
    void says_all_that_is_unread_with_line_item_and_value() {
        Notice wrong =
                one(TAXIWAY.replace("5129N", "5169N").replace("B)0609050500", "B)0613050500"));

        assertThat(wrong.circle()).isEmpty();
        assertThat(wrong.validity()).isEmpty();
        assertThat(wrong.unread())
                .extracting(Unread::line, Unread::item)
                .containsExactly(tuple(2, "Q"), tuple(3, "B"));
        assertThat(wrong.unread().get(1).value()).isEqualTo("0613050500");
    }

    @Test
    void refuses_an_end_before_the_beginning() {
        Notice wrong = one(TAXIWAY.replace("C)0704300500", "C)0504300500"));

        assertThat(wrong.validity()).isEmpty();
        assertThat(wrong.unread()).extracting(Unread::item).containsExactly("C");
    }

    @Test
    void an_estimated_end_is_no_end() {
        Instant begin = Instant.parse("2008-01-01T06:00:00Z");
        Instant end = Instant.parse("2008-01-01T16:00:00Z");

        Validity sure = one(TAXIWAY).validity().orElseThrow();
        Validity guessed =
                one(TAXIWAY.replace("C)0704300500", "C)0704300500 EST")).validity().orElseThrow();
        Validity open = one(TAXIWAY.replace("C)0704300500", "C)PERM")).validity().orElseThrow();

        assertThat(sure.mayTouch(begin, end)).isFalse();
        assertThat(guessed.mayTouch(begin, end)).isTrue();
        assertThat(open.mayTouch(begin, end)).isTrue();
        assertThat(open.mayTouch(begin.minusSeconds(90_000_000), begin.minusSeconds(80_000_000)))
                .isFalse();
    }

    @Test
    void finds_positions_in_the_text_whole_minutes_or_with_seconds() {
        Notice notice =
                one(
                        TAXIWAY.replace(
                                "CTN ADZ",
                                "CRANE PSN 470123.5N 0110456.0E AND 4702N01106W, NOT 4799N01106E"));

        assertThat(notice.named()).hasSize(2);
        assertThat(notice.named().get(0).centre().latDeg())
                .isCloseTo(47 + 1 / 60.0 + 23.5 / 3600, within(1e-9));
        assertThat(notice.named().get(1).centre().lonDeg())
                .isCloseTo(-(11 + 6 / 60.0), within(1e-9));
        // Half a minute of latitude is 926 m, and no more of longitude.
        assertThat(notice.named().get(1).radiusM()).isCloseTo(926 * Math.sqrt(2), within(1e-6));
        assertThat(notice.named().get(0).radiusM())
                .isCloseTo(926 * Math.sqrt(2) / 60, within(1e-6));
    }

    @Test
    void letters_with_a_bracket_in_the_text_are_no_items() {
        Notice notice = one(TAXIWAY.replace("CTN ADZ", "SEE A) AND B) OR C) HERE"));

        assertThat(notice.unread()).isEmpty();
        assertThat(notice.validity()).isPresent();
    }
}
