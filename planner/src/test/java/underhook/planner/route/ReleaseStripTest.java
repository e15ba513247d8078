package underhook.planner.route;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import underhook.core.fall.Fall;
import underhook.core.geo.GridHeightField;
import underhook.core.geo.GridShape;
import underhook.core.geo.HeightField;
import underhook.core.geo.PlanePoint;
import underhook.core.job.LoadShape;
import underhook.core.plan.ReleaseLook;
import underhook.core.plan.ReleaseLook.Use;

class ReleaseStripTest {
    private static final HeightField LEVEL =
            GridHeightField.of(new GridShape(-2000, -2000, 20, 200, 200), (east, north) -> 100);

    /** 300 kg without drag, 25 m below the hook with its low end at 26 m. */
    private static final Cargo STONE =
            new Cargo(
                    new Fall.Body(300, 0, 1.2),
                    new Fall.Body(300, 0, 1.2),
                    LoadShape.BAG,
                    25,
                    26,
                    20,
                    0,
                    0);

    /** From west to east along north 0, hook at 176 m AMSL: the low end 50 m above ground. */
    private static final FlownLeg LEG =
            new FlownLeg(
                    List.of(new PlanePoint(-1000, 0), new PlanePoint(1000, 0)),
                    List.of(176.0, 176.0),
                    2000,
                    0,
                    50,
                    List.of());

    private static Geometry box(double west, double south, double east, double north) {
        return new GeometryFactory()
                .createPolygon(
                        new Coordinate[] {
                            new Coordinate(west, south),
                            new Coordinate(east, south),
                            new Coordinate(east, north),
                            new Coordinate(west, north),
                            new Coordinate(west, south)
                        });
    }

    private static ReleaseLook strip(Under... unders) {
        return new ReleaseStrip(new Patches(LEVEL), List.of(unders), 0)
                .along(LEG, List.of(STONE), LegWind.CALM)
                .orElseThrow()
                .look();
    }

    @Test
    void over_empty_ground_it_may_be_let_go_all_the_way() {
        // 2000 m less 30 m at each end, at 20 m/s.
        ReleaseLook strip = strip();

        assertThat(strip.stretches()).hasSize(1);
        assertThat(strip.stretches().get(0).use()).isEqualTo(Use.OPEN);
        assertThat(strip.stretches().get(0).durationS()).isCloseTo(97, within(1e-6));
        assertThat(strip.longestClosedS()).isZero();
        assertThat(strip.longestUnnamedS()).isCloseTo(97, within(1e-6));
    }

    @Test
    void a_house_closes_the_leg_before_it_by_the_throw() {
        // DERIVED 20 m/s from 50 m throws 63.9 m; speed ±10 %, swing 10° on 25 m, height to whole 5
        // m.
        ReleaseLook strip = strip(new Under("H", Use.CLOSED, true, box(-5, -5, 5, 5)));

        assertThat(strip.stretches()).hasSize(3);
        ReleaseLook.Stretch closed = strip.stretches().get(1);
        assertThat(closed.what()).containsExactly("H");
        assertThat(closed.fromM()).isBetween(850.0, 925.0);
        assertThat(closed.toM()).isBetween(950.0, 1000.0);
        assertThat(strip.longestClosedS())
                .isCloseTo((closed.toM() - closed.fromM()) / 20, within(0.1));
    }

    @Test
    void a_road_below_where_it_slows_down_is_guarded() {
        // DERIVED 480 m of even slowing leave 20·√(160/480) = 11.5 m/s 160 m before the end; 150 m
        // down that throws 11.5·√(2·150/9.80665) = 63.9 m, and full speed no less than 80 m.
        FlownLeg high = new FlownLeg(LEG.points(), List.of(276.0, 276.0), 2000, 0, 150, List.of());
        Cargo gentle = new Cargo(STONE.light(), STONE.heavy(), STONE.shape(), 25, 26, 20, 0, 480);
        Under road = new Under("R", Use.GUARDED, false, box(902, -500, 906, 500));

        ReleaseLook look =
                new ReleaseStrip(new Patches(LEVEL), List.of(road), 150)
                        .along(high, List.of(gentle), LegWind.CALM)
                        .orElseThrow()
                        .look();

        assertThat(
                        look.stretches().stream()
                                .filter(one -> one.fromM() <= 1840 && one.toM() >= 1840))
                .extracting(ReleaseLook.Stretch::use)
                .contains(Use.GUARDED);
    }

    @Test
    void a_house_aside_does_not_matter() {
        assertThat(strip(new Under("H", Use.CLOSED, true, box(-5, 60, 5, 70))).longestClosedS())
                .isZero();
    }

    @Test
    void the_worst_thing_under_a_patch_counts() {
        ReleaseLook strip =
                strip(
                        new Under("road", Use.GUARDED, false, box(-20, -500, 20, 500)),
                        new Under("H", Use.CLOSED, true, box(-5, -5, 5, 5)),
                        new Under("J", Use.NAMED, false, box(-400, -200, 400, 200)));

        assertThat(strip.stretches().stream().map(ReleaseLook.Stretch::use))
                .containsExactly(
                        Use.OPEN,
                        Use.NAMED,
                        Use.GUARDED,
                        Use.CLOSED,
                        Use.GUARDED,
                        Use.NAMED,
                        Use.OPEN);
    }

    @Test
    void a_named_area_counts_where_it_holds_the_whole_patch() {
        assertThat(
                        strip(new Under("J", Use.NAMED, false, box(-400, -200, 400, 200)))
                                .stretches()
                                .stream()
                                .filter(one -> one.use() == Use.NAMED)
                                .count())
                .isEqualTo(1);
        // Narrower than swing and pad to both sides: never.
        assertThat(strip(new Under("J", Use.NAMED, false, box(-400, -4, 400, 4))).longestUnnamedS())
                .isCloseTo(97, within(1e-6));
    }

    @Test
    void over_unknown_ground_there_is_no_answer() {
        FlownLeg away =
                new FlownLeg(
                        List.of(new PlanePoint(1500, 0), new PlanePoint(2500, 0)),
                        List.of(176.0, 176.0),
                        1000,
                        0,
                        50,
                        List.of());

        assertThat(
                        new ReleaseStrip(new Patches(LEVEL), List.of(), 0)
                                .along(away, List.of(STONE), LegWind.CALM))
                .isEmpty();
    }
}
