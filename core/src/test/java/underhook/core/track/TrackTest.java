package underhook.core.track;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import underhook.core.geo.PlanePoint;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;

/** On a made-up track whose truth is known: seeded noise, holes, passes over places. */
class TrackTest {
    private static final Instant START = Instant.parse("2026-07-14T04:30:00Z");
    private static final Map<PlaceId, PlanePoint> PLACES =
            Map.of(
                    new PlaceId("B"), new PlanePoint(0, 0),
                    new PlaceId("S1"), new PlanePoint(1200, 300),
                    new PlaceId("S2"), new PlanePoint(1350, 380),
                    new PlaceId("S3"), new PlanePoint(1800, 900));

    /** The truth: where the machine is at each second. */
    private final List<TrackPoint> truth = new ArrayList<>();

    private PlanePoint at = new PlanePoint(0, 0);

    @Test
    void every_lift_is_found_within_seconds_in_noise_and_holes() {
        List<PlannedLift> flown = fly("S1", "S2", "S3", "S1", "S3", "S2");
        Random random = new Random(11);
        List<TrackPoint> noisy = new ArrayList<>();
        for (int i = 0; i < truth.size(); i++) {
            boolean hole = i % 157 > 150;
            if (!hole) {
                noisy.add(noise(truth.get(i), 4, random));
            }
        }

        TrackMatch match =
                TrackMatch.of(late(flown, 600), Visits.find(noisy, PLACES, Visits.Settings.USUAL));

        for (int k = 0; k < flown.size(); k++) {
            TrackMatch.Found found = match.lifts().get(k);
            assertThat(found.isWhole()).isTrue();
            assertNear(found.hook().orElseThrow().until(), flown.get(k).hookedAt());
            assertNear(
                    found.drops().get(0).orElseThrow().until(), flown.get(k).drops().get(0).at());
        }
        // The way home after the last set-down.
        assertThat(match.unmatched().stream().map(v -> v.place().value())).containsExactly("B");
    }

    @Test
    void what_was_flown_out_of_order_is_found_and_what_was_not_flown_is_not() {
        List<PlannedLift> flown = fly("S1", "S3", "S2");
        List<PlannedLift> planned =
                List.of(flown.get(2), flown.get(0), flown.get(1), never(flown.get(1)));

        TrackMatch match =
                TrackMatch.of(planned, Visits.find(truth, PLACES, Visits.Settings.USUAL));

        assertThat(match.lifts().get(0).isWhole()).isTrue();
        assertNear(
                match.lifts().get(0).drops().get(0).orElseThrow().until(),
                flown.get(2).drops().get(0).at());
        assertThat(match.lifts().get(1).isWhole()).isTrue();
        assertThat(match.lifts().get(2).isWhole()).isTrue();
        assertThat(match.lifts().get(3).isWhole()).isFalse();
    }

    @Test
    void flying_past_a_place_is_no_visit_and_a_hole_over_one_is_told() {
        fly("S3");
        List<TrackPoint> holed = new ArrayList<>(truth);
        Visit whole = Visits.find(truth, PLACES, Visits.Settings.USUAL).get(1);
        assertThat(whole.place()).isEqualTo(new PlaceId("S3"));
        assertThat(whole.certain()).isTrue();
        holed.removeIf(
                p ->
                        p.at().isAfter(whole.from().plusSeconds(10))
                                && p.at().isBefore(whole.from().plusSeconds(30)));

        List<Visit> seen = Visits.find(holed, PLACES, Visits.Settings.USUAL);

        // S1 and S2 lie beside the way to S3.
        assertThat(seen.stream().map(v -> v.place().value())).containsExactly("B", "S3", "B");
        assertThat(seen.get(1).certain()).isFalse();
    }

    /** From B to each site in turn: half a minute at B, there at 20 m/s, 50 s, and back. */
    private List<PlannedLift> fly(String... sites) {
        List<PlannedLift> lifts = new ArrayList<>();
        PlaceId home = new PlaceId("B");
        for (int k = 0; k < sites.length; k++) {
            PlaceId site = new PlaceId(sites[k]);
            stay(30);
            Instant hooked = now();
            go(where(site));
            stay(50);
            LoadId load = new LoadId("L" + k);
            lifts.add(
                    new PlannedLift(
                            List.of(load),
                            home,
                            hooked,
                            List.of(new PlannedLift.Drop(load, site, now()))));
            go(where(home));
        }
        stay(40);
        return lifts;
    }

    private static PlannedLift never(PlannedLift like) {
        return new PlannedLift(
                like.loads(),
                like.hookedWhere(),
                like.hookedAt().plusSeconds(400),
                List.of(
                        new PlannedLift.Drop(
                                new LoadId("L99"),
                                like.drops().get(0).place(),
                                like.drops().get(0).at().plusSeconds(400))));
    }

    private static List<PlannedLift> late(List<PlannedLift> lifts, long bySeconds) {
        return IntStream.range(0, lifts.size())
                .mapToObj(
                        k -> {
                            PlannedLift lift = lifts.get(k);
                            long s = bySeconds + 40L * k;
                            PlannedLift.Drop drop = lift.drops().get(0);
                            return new PlannedLift(
                                    lift.loads(),
                                    lift.hookedWhere(),
                                    lift.hookedAt().minusSeconds(s),
                                    List.of(
                                            new PlannedLift.Drop(
                                                    drop.load(),
                                                    drop.place(),
                                                    drop.at().minusSeconds(s))));
                        })
                .toList();
    }

    private static PlanePoint where(PlaceId place) {
        return Objects.requireNonNull(PLACES.get(place));
    }

    private void stay(int seconds) {
        for (int i = 0; i < seconds; i++) {
            truth.add(new TrackPoint(now(), at));
        }
    }

    private void go(PlanePoint to) {
        double bearing = at.bearingToGridRad(to);
        double left = at.distanceToM(to);
        PlanePoint from = at;
        double whole = left;
        while (left > 20) {
            left -= 20;
            at = from.towards(bearing, whole - left);
            truth.add(new TrackPoint(now(), at));
        }
        at = to;
    }

    private Instant now() {
        return START.plusSeconds(truth.size());
    }

    private static TrackPoint noise(TrackPoint point, double spreadM, Random random) {
        return new TrackPoint(
                point.at(),
                new PlanePoint(
                        point.point().eastM() + spreadM * random.nextGaussian(),
                        point.point().northM() + spreadM * random.nextGaussian()));
    }

    private static void assertNear(Instant found, Instant true_) {
        assertThat(Math.abs(Duration.between(found, true_).toSeconds())).isLessThanOrEqualTo(15);
    }
}
