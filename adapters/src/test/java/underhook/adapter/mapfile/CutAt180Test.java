package underhook.adapter.mapfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import underhook.adapter.mapfile.MapItem.Vertex;
import underhook.core.geo.GeoPoint;

class CutAt180Test {
    /**
     * @source RFC 7946 section 3.1.9: its line and its area, cut as it cuts them
     */
    @Test
    void examples_of_the_standard_are_cut_as_there() {
        assertThat(CutAt180.line(List.of(at(170, 45), at(-170, 45))))
                .containsExactly(
                        List.of(at(170, 45), at(180, 45)), List.of(at(-180, 45), at(-170, 45)));
        List<List<Vertex>> area =
                CutAt180.area(
                        List.of(at(170, 40), at(-170, 40), at(-170, 50), at(170, 50), at(170, 40)));
        assertThat(area).hasSize(2);
        assertThat(area.get(0))
                .contains(at(170, 40), at(180, 40), at(180, 50), at(170, 50))
                .hasSize(5);
        assertThat(area.get(1))
                .contains(at(-180, 40), at(-170, 40), at(-170, 50), at(-180, 50))
                .hasSize(5);
    }

    @Test
    void what_only_touches_the_meridian_stays_whole() {
        assertThat(CutAt180.line(List.of(at(-180, 1), at(179, 1))))
                .containsExactly(List.of(at(180, 1), at(179, 1)));
        List<Vertex> ring = List.of(at(179, 1), at(180, 1), at(180, 2), at(179, 1));
        assertThat(CutAt180.area(ring)).containsExactly(ring);
    }

    @Test
    void heights_go_on_evenly_through_the_cut() {
        List<List<Vertex>> parts =
                CutAt180.line(
                        List.of(
                                new Vertex(new GeoPoint(-17, 179.99), 100),
                                new Vertex(new GeoPoint(-17, -179.97), 140)));

        assertThat(parts.get(0).get(1).altitudeAmslM()).isCloseTo(110, within(1e-6));
        assertThat(parts.get(1).get(0).altitudeAmslM()).isCloseTo(110, within(1e-6));
    }

    /** A horseshoe open to the east: one part in the west, its two ends in the east. */
    @Test
    void an_area_may_fall_into_several_parts_on_one_side() {
        List<List<Vertex>> parts =
                CutAt180.area(
                        List.of(
                                at(179, 0),
                                at(-179, 0),
                                at(-179, 1),
                                at(179.5, 1),
                                at(179.5, 2),
                                at(-179, 2),
                                at(-179, 3),
                                at(179, 3),
                                at(179, 0)));

        assertThat(parts).hasSize(3);
        assertThat(parts.stream().mapToDouble(CutAt180Test::twiceArea).sum())
                .isCloseTo(2 * (2 * 3 - 1.5), within(1e-9));
    }

    /** Random rings round a point near the meridian, on either side; area by the shoelace sum. */
    @Test
    void no_area_is_lost_and_every_part_turns_anticlockwise_on_one_side() {
        SplittableRandom random = new SplittableRandom(180);
        int cut = 0;
        for (int n = 0; n < 300; n++) {
            double middleDeg = 180 + random.nextDouble(-1.5, 1.5);
            int corners = random.nextInt(3, 12);
            List<Vertex> ring = new ArrayList<>();
            for (int i = 0; i < corners; i++) {
                double angle = 2 * Math.PI * i / corners;
                double radiusDeg = random.nextDouble(0.2, 2);
                double lonDeg = middleDeg + radiusDeg * Math.cos(angle);
                ring.add(at(Math.IEEEremainder(lonDeg, 360), -17 + radiusDeg * Math.sin(angle)));
            }
            ring.add(ring.get(0));

            List<List<Vertex>> parts = CutAt180.area(ring);

            assertThat(parts.stream().mapToDouble(CutAt180Test::twiceArea).sum())
                    .isCloseTo(twiceArea(ring), within(1e-9));
            for (List<Vertex> part : parts) {
                assertThat(twiceArea(part)).isPositive();
                assertThat(part.get(part.size() - 1)).isEqualTo(part.get(0));
                assertThat(part.stream().map(vertex -> vertex.position().lonDeg()))
                        .satisfiesAnyOf(
                                lons -> assertThat(lons).allMatch(lon -> lon >= 0),
                                lons -> assertThat(lons).allMatch(lon -> lon <= 0));
            }
            cut += parts.size() > 1 ? 1 : 0;
        }
        assertThat(cut).isGreaterThan(100);
    }

    private static double twiceArea(List<Vertex> ring) {
        double sum = 0;
        for (int i = 0; i + 1 < ring.size(); i++) {
            double x1 = eastDeg(ring.get(0), ring.get(i));
            double x2 = eastDeg(ring.get(0), ring.get(i + 1));
            sum += x1 * ring.get(i + 1).position().latDeg() - x2 * ring.get(i).position().latDeg();
        }
        return sum;
    }

    private static double eastDeg(Vertex from, Vertex to) {
        return Math.IEEEremainder(to.position().lonDeg() - from.position().lonDeg(), 360);
    }

    private static Vertex at(double lonDeg, double latDeg) {
        return new Vertex(new GeoPoint(latDeg, lonDeg), 0);
    }
}
