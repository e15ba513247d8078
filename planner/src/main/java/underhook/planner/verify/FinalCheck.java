package underhook.planner.verify;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import underhook.core.finding.FindingCode;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Rules;
import underhook.core.job.WeatherHour;
import underhook.core.job.Wire;
import underhook.core.plan.Drop;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;

/**
 * The first and last part of each leg, and the wind on the way out. What else the rules say of a way
 * holds on these parts as on the rest of it, and is checked there.
 */
final class FinalCheck {
    /** The machine leaves within this time of the last release: rounding, and signals on the ground. */
    private static final Duration LEAVES_WITHIN = Duration.ofMinutes(3);

    private final Day day;
    private final Rules rules;
    private final Air air;
    private final List<Strung> wires = new ArrayList<>();

    /** A wire's spans in the plane. */
    private record Strung(String id, List<Plane.Stretch> spans) {}

    FinalCheck(Day day) {
        this.day = day;
        this.rules = day.job().rules();
        this.air = new Air(day.job().weather());
        for (Wire wire : day.job().wires()) {
            List<Plane.Stretch> spans = new ArrayList<>();
            for (int i = 1; i < wire.supports().size(); i++) {
                spans.add(
                        new Plane.Stretch(
                                day.planeOf(wire.supports().get(i - 1)),
                                day.planeOf(wire.supports().get(i))));
            }
            wires.add(new Strung(wire.id(), spans));
        }
    }

    void run() {
        for (Flight flight : day.listFlights()) {
            PlanePoint from = day.planeOf(flight.leg().from());
            PlanePoint to = day.planeOf(flight.leg().to());
            // Between places nearer than that there is no straight part at either end.
            if (Plane.apartM(from, to) >= rules.flying().finalM()) {
                List<PlanePoint> back = new ArrayList<>(flight.track());
                Collections.reverse(back);
                checkWires(flight, "first", endPart(flight.track()));
                checkWires(flight, "last", endPart(back));
            }
        }
        for (Step step : day.plan().steps()) {
            step.rotation().ifPresent(this::checkWayOut);
        }
    }

    /** The track from its start on, as long as the straight part. */
    private List<Plane.Stretch> endPart(List<PlanePoint> track) {
        List<Plane.Stretch> part = new ArrayList<>();
        double left = rules.flying().finalM() - Tolerance.PLAN_M;
        for (int i = 1; i < track.size() && left > 0; i++) {
            PlanePoint a = track.get(i - 1);
            double piece = Plane.apartM(a, track.get(i));
            double share = piece > left ? left / piece : 1;
            part.add(new Plane.Stretch(a, Plane.between(a, track.get(i), share)));
            left -= piece;
        }
        return part;
    }

    private void checkWires(Flight flight, String which, List<Plane.Stretch> part) {
        for (Strung wire : wires) {
            boolean crossed =
                    part.stream()
                            .anyMatch(
                                    piece ->
                                            wire.spans().stream()
                                                    .anyMatch(span -> Plane.cross(piece, span)));
            day.ledger()
                    .demand(
                            !crossed,
                            FindingCode.APPROACH_REFUSED,
                            flight.subject(),
                            () ->
                                    Told.of(
                                            "rules",
                                            "The "
                                                    + which
                                                    + " part of the leg passes over the wire "
                                                    + wire.id()
                                                    + "."));
        }
    }

    private void checkWayOut(Rotation rotation) {
        for (Drop drop : rotation.drops()) {
            Instant last = rotation.drops().get(rotation.drops().size() - 1).releasedAt();
            double tail =
                    Math.min(tailMPerS(drop, last), tailMPerS(drop, last.plus(LEAVES_WITHIN)));
            day.ledger()
                    .demand(
                            tail <= rules.flying().tailwindMPerS() + Tolerance.WIND_DUST_M_PER_S,
                            FindingCode.APPROACH_REFUSED,
                            drop.load().value(),
                            () ->
                                    Told.of(
                                                    "rules",
                                                    "The way out after "
                                                            + drop.load()
                                                            + " has too much tailwind.")
                                            .figures(tail, rules.flying().tailwindMPerS(), "m/s"));
        }
    }

    /** The most tailwind by any row that counts then; none outside the forecast, refused elsewhere. */
    private double tailMPerS(Drop drop, Instant at) {
        double exposure = day.job().getPlace(drop.place()).exposureFactor();
        double most = Double.NEGATIVE_INFINITY;
        for (WeatherHour row : air.listRows(at)) {
            double off = row.windFromTrueRad() - drop.departureTrackTrueRad();
            most = Math.max(most, -row.windMPerS() * exposure * Math.cos(off));
        }
        return most;
    }
}
