package underhook.core.site;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static underhook.core.site.RoomTest.CRAFT;
import static underhook.core.site.RoomTest.NEEDS;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;
import underhook.core.geo.PlanePoint;
import underhook.core.site.Surroundings.Layer;
import underhook.testkit.SeededSamples;

class RoomPropertyTest {
    private static final long SEED = 20260908;

    private static DoubleBinaryOperator hills(SeededSamples samples) {
        double east = samples.between(-1, 1);
        double north = samples.between(-1, 1);
        double wave = samples.between(0, 15);
        double length = samples.between(5, 40);
        double phase = samples.between(0, 6);
        return (e, n) ->
                300
                        + east * e
                        + north * n
                        + wave * Math.sin(e / length + phase) * Math.cos(n / length);
    }

    private static Room room(SeededSamples samples, double canopyM) {
        List<Wall> walls = new ArrayList<>();
        for (int i = samples.wholeBetween(0, 2); i > 0; i--) {
            PlanePoint a = new PlanePoint(samples.between(-70, 70), samples.between(-70, 70));
            PlanePoint b = new PlanePoint(samples.between(-70, 70), samples.between(-70, 70));
            walls.add(
                    new Wall(
                            "W" + i,
                            samples.coin() ? Cause.WIRE : Cause.THING,
                            a,
                            b,
                            samples.between(290, 340),
                            samples.between(290, 340),
                            samples.between(0, 5)));
        }
        return RoomTest.room(
                RoomTest.ground(hills(samples)),
                RoomTest.place(OptionalDouble.of(canopyM), 1, samples.between(0, 30)),
                walls);
    }

    /** Every column looked at, in the order in which the answer counts. */
    private static double naiveM(List<Column> columns, Bar bar, double beyondM) {
        double best = Double.POSITIVE_INFINITY;
        for (Column column : columns) {
            double aside =
                    bar.apartM(column.eastM(), column.northM()) - bar.radiusM() - column.padM();
            boolean counts = beyondM <= 0 || column.distanceM() - column.padM() > beyondM;
            if (counts) {
                best = Math.min(best, Bar.inSpaceM(aside, bar.bottomAmslM() - column.topAmslM()));
            }
        }
        return best;
    }

    @Test
    void the_pruned_search_finds_what_looking_at_every_column_finds() {
        SeededSamples.of(SEED)
                .forEach(
                        60,
                        samples -> {
                            Room room = room(samples, samples.coin() ? 0 : samples.between(0, 30));
                            Layer layer = samples.oneOf(List.of(Layer.values()));
                            for (Cause cause : Cause.values()) {
                                List<Column> all = room.around().listColumns(layer, cause);
                                Columns columns = room.around().sorted(layer, cause);
                                Bar bar =
                                        Bar.along(
                                                samples.between(0, 6.3),
                                                samples.between(0, 12),
                                                samples.between(0, 6),
                                                Bar.disc(
                                                        samples.between(0, 6),
                                                        300 + samples.between(-20, 80)));
                                double beyondM = samples.coin() ? 0 : samples.between(0, 5);
                                int guess =
                                        all.isEmpty()
                                                ? -1
                                                : samples.wholeBetween(-1, all.size() - 1);
                                int found = columns.nearest(bar, beyondM, guess);
                                double foundM =
                                        found < 0
                                                ? Double.POSITIVE_INFINITY
                                                : columns.marginM(bar, found);

                                assertThat(foundM).isEqualTo(naiveM(all, bar, beyondM));
                                assertThat(found).isEqualTo(columns.nearest(bar, beyondM, -1));
                            }
                        });
    }

    private static boolean isRefused(Room room, double headingRad, Rig rig) {
        return room.at(headingRad, rig).fit() == Fit.REFUSED;
    }

    @Test
    void what_a_longer_line_is_refused_a_shorter_one_is_too() {
        SeededSamples.of(SEED + 1)
                .forEach(
                        100,
                        samples -> {
                            Room room = room(samples, samples.between(0, 25));
                            double heading = samples.between(0, 6.3);
                            double lineM = samples.between(5, 60);
                            if (isRefused(room, heading, Rig.empty(lineM + 5))) {
                                assertThat(isRefused(room, heading, Rig.empty(lineM))).isTrue();
                            }
                        });
    }

    @Test
    void taller_trees_and_larger_margins_never_make_room() {
        SeededSamples.of(SEED + 2)
                .forEach(
                        60,
                        samples -> {
                            DoubleBinaryOperator hills = hills(samples);
                            double canopyM = samples.between(0, 20);
                            double clearingM = samples.between(0, 30);
                            Room low = wooded(hills, canopyM, clearingM);
                            Room high = wooded(hills, canopyM + samples.between(0, 5), clearingM);
                            Needs more =
                                    new Needs(
                                            NEEDS.rotorClearanceM() + samples.between(0, 5),
                                            NEEDS.wireClearanceM(),
                                            0,
                                            NEEDS.margins());
                            Room wide = Room.of(low.around(), CRAFT, more);
                            double heading = samples.between(0, 6.3);
                            Rig rig = new Rig(samples.between(5, 60), 0, 1, 1);
                            if (isRefused(low, heading, rig)) {
                                assertThat(isRefused(high, heading, rig)).isTrue();
                                assertThat(isRefused(wide, heading, rig)).isTrue();
                            }
                        });
    }

    private static Room wooded(DoubleBinaryOperator hills, double canopyM, double clearingM) {
        return RoomTest.room(
                RoomTest.ground(hills),
                RoomTest.place(OptionalDouble.of(canopyM), 1, clearingM),
                List.of());
    }

    @Test
    void turning_or_mirroring_the_ground_turns_or_mirrors_the_answer() {
        SeededSamples.of(SEED + 3)
                .forEach(
                        30,
                        samples -> {
                            DoubleBinaryOperator hills = hills(samples);
                            double heading = samples.between(0, 6.3);
                            Rig rig = new Rig(samples.between(10, 40), 0, 1, 1);
                            HeadingRoom as = wooded(hills, 0, 9).at(heading, rig);
                            // A quarter turn clockwise: what was north is east.
                            HeadingRoom turned =
                                    wooded((e, n) -> hills.applyAsDouble(-n, e), 0, 9)
                                            .at(heading + Math.PI / 2, rig);
                            HeadingRoom mirrored =
                                    wooded((e, n) -> hills.applyAsDouble(-e, n), 0, 9)
                                            .at(-heading, rig);

                            assertSame(as, turned);
                            assertSame(as, mirrored);
                        });
    }

    private static void assertSame(HeadingRoom one, HeadingRoom other) {
        assertThat(other.margins()).hasSameSizeAs(one.margins());
        for (int i = 0; i < one.margins().size(); i++) {
            assertThat(other.margins().get(i).part()).isEqualTo(one.margins().get(i).part());
            // Sines of turned angles differ in the last digit, times some 60 m.
            assertThat(other.margins().get(i).marginM())
                    .isCloseTo(one.margins().get(i).marginM(), within(1e-9));
        }
    }

    @Test
    void a_steeper_way_than_the_least_keeps_the_margin_and_a_flatter_one_does_not() {
        SeededSamples.of(SEED + 4)
                .forEach(
                        40,
                        samples -> {
                            Room room = room(samples, 0);
                            double heading = samples.between(0, 6.3);
                            Rig rig = Rig.empty(samples.between(10, 40));
                            double leastRad = room.straightOut(heading, rig).leastRad();
                            if (leastRad > 0.02 && leastRad < 1.5) {
                                assertThat(refusedOut(room, heading, rig, leastRad + 1e-6))
                                        .isFalse();
                                assertThat(refusedOut(room, heading, rig, leastRad - 0.01))
                                        .isTrue();
                            }
                        });
    }

    private static boolean refusedOut(Room room, double headingRad, Rig rig, double angleRad) {
        Needs needs =
                new Needs(
                        NEEDS.rotorClearanceM(),
                        NEEDS.wireClearanceM(),
                        0,
                        new underhook.core.job.Rules.Margins(
                                2, 2, angleRad, underhook.core.job.WireBufferRule.CRANE));
        return Room.of(room.around(), CRAFT, needs).wayOut(headingRad, rig) == Fit.REFUSED;
    }
}
