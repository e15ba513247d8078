package underhook.adapter.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.PlanePoint;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;
import underhook.core.plan.Leg;
import underhook.core.plan.PathPoint;
import underhook.core.plan.ReleaseLook;
import underhook.core.plan.ReleaseLook.Stretch;
import underhook.core.plan.ReleaseLook.Use;

class LetGoTest {
    /** Degrees stand for metres. */
    private static Leg leg() {
        return new Leg(
                List.of(new LoadId("L1")),
                new PlaceId("A"),
                new PlaceId("S1"),
                List.of(
                        new PathPoint(new GeoPoint(0, 0), 300),
                        new PathPoint(new GeoPoint(0, 60), 300),
                        new PathPoint(new GeoPoint(40, 60), 300)),
                100,
                50,
                40,
                10,
                20,
                List.of(),
                List.of(),
                Leg.Looks.NONE);
    }

    private static Leg looked(Stretch... stretches) {
        return leg().withRelease(new ReleaseLook(List.of(stretches), 5, 50, 80));
    }

    @Test
    void says_in_few_words_where_not_to_let_go() {
        Leg leg =
                looked(
                        new Stretch(Use.OPEN, 30, 340, 10, List.of()),
                        new Stretch(Use.GUARDED, 340, 520, 5, List.of("R1")),
                        new Stretch(Use.CLOSED, 520, 610, 5, List.of("LL1")),
                        new Stretch(Use.NAMED, 610, 900, 9, List.of("J1")));

        assertThat(LetGo.line(leg))
                .contains("Let go: NOT over LL1 0.5–0.7 km; guarded R1 0.3–0.6 km; areas J1.");
    }

    @Test
    void makes_one_stretch_of_those_that_touch_and_keeps_the_cards_words_few() {
        Leg leg =
                looked(
                        new Stretch(Use.GUARDED, 110, 190, 5, List.of("R1")),
                        new Stretch(Use.CLOSED, 190, 210, 5, List.of("N1")),
                        new Stretch(Use.GUARDED, 210, 390, 5, List.of("R1")),
                        new Stretch(Use.OPEN, 390, 900, 9, List.of()));

        // 110 to 190 m is 0.1 to 0.2 km, 210 to 390 m is 0.2 to 0.4 km: outward they touch.
        assertThat(LetGo.brief(leg)).contains("NOT over N1 0.1–0.3 km; guarded R1 0.1–0.4 km");
        assertThat(LetGo.line(leg))
                .hasValueSatisfying(line -> assertThat(line).contains("no named"));
    }

    /** LL1 from 1.21 to 2.05 km, and N2 and N4 within its 1.9 to 2.0 km: each thing once, none short. */
    @Test
    void tells_each_thing_once_over_all_stretches_it_has_a_part_in() {
        Leg leg =
                looked(
                        new Stretch(Use.CLOSED, 1210, 1900, 5, List.of("LL1")),
                        new Stretch(Use.CLOSED, 1900, 1930, 5, List.of("LL1", "N4")),
                        new Stretch(Use.CLOSED, 1930, 1960, 5, List.of("LL1", "N2", "N4")),
                        new Stretch(Use.CLOSED, 1960, 1990, 5, List.of("LL1", "N2")),
                        new Stretch(Use.CLOSED, 1990, 2050, 5, List.of("LL1")));

        assertThat(LetGo.brief(leg))
                .contains("NOT over LL1 1.2–2.1 km; NOT over N4, N2 1.9–2.0 km");
    }

    /** It stands behind a full stop on the card. */
    @Test
    void begins_as_a_sentence_on_the_card() {
        Leg guarded = looked(new Stretch(Use.GUARDED, 130, 390, 9, List.of("R1")));

        assertThat(LetGo.brief(guarded)).contains("Guarded R1 0.1–0.4 km");
    }

    @Test
    void tells_a_long_stretch_without_a_spot_in_seconds_rounded_up() {
        Leg leg =
                leg().withRelease(
                                new ReleaseLook(
                                        List.of(
                                                new Stretch(
                                                        Use.CLOSED, 30, 340, 12.3, List.of("LL1"))),
                                        12.3,
                                        12.3,
                                        80));

        assertThat(LetGo.brief(leg))
                .contains("NOT over LL1 0.0–0.4 km; 13 s on end without a spot");
    }

    @Test
    void says_when_no_area_is_named_and_nothing_without_a_load() {
        assertThat(LetGo.line(looked(new Stretch(Use.OPEN, 30, 900, 9, List.of()))))
                .contains("Let go: no named area.");
        assertThat(LetGo.line(leg())).isEmpty();
    }

    @Test
    void cuts_closed_stretches_out_of_the_path_with_their_bends() {
        Leg leg = looked(new Stretch(Use.CLOSED, 50, 70, 5, List.of("LL1")));

        assertThat(
                        LetGo.closed(
                                leg,
                                points ->
                                        points.stream()
                                                .map(at -> new PlanePoint(at.lonDeg(), at.latDeg()))
                                                .toList()))
                .containsExactly(
                        List.of(
                                new PlanePoint(50, 0),
                                new PlanePoint(60, 0),
                                new PlanePoint(60, 10)));
    }
}
