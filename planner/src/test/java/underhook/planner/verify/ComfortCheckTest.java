package underhook.planner.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static underhook.planner.verify.SmallDay.at;
import static underhook.planner.verify.SmallDay.pid;
import static underhook.planner.verify.SmallDay.with;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.Ground;
import underhook.core.geo.HeightField;
import underhook.core.geo.PlanePoint;
import underhook.core.job.ComfortRates;
import underhook.core.job.Rules;
import underhook.core.plan.DayPrice;
import underhook.core.plan.RefusedComfort;
import underhook.core.plan.RefusedComfort.Comfort;

/**
 * By hand, of {@link SmallDay}: 2026-09-08 at 46.8° north and 12° west, the sun's transit at 12:45.7 UTC and its
 * declination 5.7° ({@link DaylightTest}).
 *
 * <p>B1 comes in eastward, let go at 08:16:40 UTC. At 08:15 the hour angle is -67.7°: the sun stands 19.3° up at
 * 102.7°, 23.0° off the nose, so in the eyes. B2 and B3 come in northward and are through at 08:21:10; at 08:20 the sun
 * stands 20.2° up at 103.7°, 24.2° off the right side, to which the pilot leans out. P1 comes in eastward at 09:03; at
 * 09:00 the sun stands 26.7° up at 111.9°, 34.0° off the nose: no more in the eyes. W1 comes in southward with 5 m/s,
 * 9.7 kt, from behind: nine full knots. B1 and P1 have 9.7 kt from the side, 5.8 kt above 2 m/s: five full knots. Crew
 * P walks for 20 minutes.
 */
class ComfortCheckTest {
    static final ComfortRates RATES = new ComfortRates(1000, 500, 100, 50, 2, 25);

    static final List<RefusedComfort> REFUSED =
            List.of(
                    new RefusedComfort(Comfort.SUN_AHEAD, "B1", pid("S2"), at(1000), 1, 1000),
                    new RefusedComfort(Comfort.CROSSWIND, "B1", pid("S2"), at(1000), 5, 250),
                    new RefusedComfort(Comfort.SUN_BESIDE, "B2", pid("S1"), at(1270), 1, 500),
                    new RefusedComfort(Comfort.CROSSWIND, "P1", pid("S2"), at(3780), 5, 250),
                    new RefusedComfort(Comfort.TAILWIND, "W1", pid("A"), at(4080), 9, 900),
                    new RefusedComfort(Comfort.WALK, "P", pid("S1"), at(4800), 20, 500));

    /** The day with rates of comforts alone, and a price that tells these. */
    static SmallDay telling(SmallDay d, List<RefusedComfort> comforts) {
        return d.rule("costs", new Rules.Costs(0, 0, 0, "EUR").with(RATES))
                .inPlan(
                        "summary",
                        with(
                                d.plan().summary(),
                                "price",
                                Optional.of(new DayPrice(0, 0, 0, comforts, "EUR"))));
    }

    /** The same with one told otherwise. */
    static SmallDay telling(SmallDay d, int index, RefusedComfort other) {
        List<RefusedComfort> comforts = new ArrayList<>(REFUSED);
        comforts.set(index, other);
        return telling(d, comforts);
    }

    private static List<String> refused(SmallDay d) {
        return new PlanVerifier()
                .check(d.job(), d.ground(), d.plan()).violations().stream()
                        .map(one -> one.code() + " " + one.message())
                        .toList();
    }

    @Test
    void what_is_refused_is_found_again_with_its_price() {
        SmallDay day = telling(SmallDay.good(), REFUSED);

        assertThat(refused(day)).isEmpty();
        // 10.00 + 2.50 + 5.00 + 2.50 + 9.00 + 5.00
        assertThat(day.plan().summary().price().orElseThrow().comfortsCents()).isEqualTo(3400);
        assertThat(day.plan().summary().price().orElseThrow().totalCents()).isEqualTo(3400);
    }

    @Test
    void without_rates_nothing_is_told() {
        SmallDay day =
                telling(SmallDay.good(), List.of())
                        .rule("costs", new Rules.Costs(0, 0, 0, "EUR").with(ComfortRates.NONE));

        assertThat(refused(day)).isEmpty();
    }

    /** The flat east of S2 stands up as a wall of 60°: nobody sees the sun then. */
    @Test
    void terrain_that_hides_the_sun_refuses_nothing() {
        SunSight open = SunSight.over(SmallDay.good().ground(), SmallDay.geo(1000, 0), 30, at(900));
        SunSight hidden =
                SunSight.over(
                        new Ground(SmallDay.FRAME, wall(), Optional.empty(), 0),
                        SmallDay.geo(1000, 0),
                        30,
                        at(900));

        assertThat(open.dazzles(Math.PI / 2, true)).isTrue();
        assertThat(hidden.dazzles(Math.PI / 2, false)).isFalse();
    }

    /**
     * At 39.742476° north and 105.1786° west, 2003-10-17 at 12:30:30 seven hours behind: azimuth 194.34024°, elevation
     * 39.888378° as seen (NREL/TP-560-34302, table A5.1). 0.02°: the general equations are good to that.
     */
    @Test
    void the_sun_stands_where_a_published_example_has_it() {
        SunSight sun =
                SunSight.overSea(
                        new GeoPoint(39.742476, -105.1786), Instant.parse("2003-10-17T19:30:30Z"));

        assertThat(Math.toDegrees(sun.azimuthTrueRad()) + 360).isCloseTo(194.34024, within(0.02));
        assertThat(Math.toDegrees(sun.elevationRad())).isCloseTo(39.888378, within(0.02));
    }

    private static HeightField wall() {
        HeightField flat = SmallDay.SLOPE;
        return new HeightField() {
            @Override
            public boolean covers(double eastM, double northM) {
                return flat.covers(eastM, northM);
            }

            @Override
            public double heightM(double eastM, double northM) {
                return flat.heightM(eastM, northM) + (eastM > 1100 ? 300 : 0);
            }

            @Override
            public double highestWithinM(PlanePoint centre, double radiusM) {
                return flat.highestWithinM(centre, radiusM);
            }

            @Override
            public boolean coversDisc(PlanePoint centre, double radiusM) {
                return flat.coversDisc(centre, radiusM);
            }

            @Override
            public double cellSizeM() {
                return flat.cellSizeM();
            }
        };
    }
}
