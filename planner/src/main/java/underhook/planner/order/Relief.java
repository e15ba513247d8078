package underhook.planner.order;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.geo.RingRise;
import underhook.core.geo.WindSide;
import underhook.core.job.LineItem;
import underhook.core.unit.Units;

/** What the shape of the ground does to the wind at a place, and to judging height there. */
final class Relief {
    /** From this wind on, up- and downdraught are to be expected, m/s: 10 kt. @source FAA-8083-21B */
    private static final double DRAUGHT_FROM_M_PER_S = Units.ktToMPerS(10);

    /** On which line something hangs there, and whether it stands up. */
    private record Hang(int line, boolean standsUp) {}

    private final Flights flights;
    private final DayModel model;
    private final List<Finding> all = new ArrayList<>();

    Relief(Flights flights) {
        this.flights = flights;
        this.model = flights.model();
    }

    List<Finding> list() {
        List<String> windward = new ArrayList<>();
        flights.byPlace()
                .forEach(
                        (place, lifts) -> {
                            lee(place, lifts);
                            if (!hoursOn(WindSide.WINDWARD, place, lifts).isEmpty()) {
                                windward.add(id(place));
                            }
                            model.sky()
                                    .fallsAwayRad(place)
                                    .ifPresent(rad -> fewCues(place, rad, lifts));
                        });
        if (!windward.isEmpty()) {
            all.add(
                    Finding.of(
                            FindingCode.WINDWARD,
                            Severity.NOTE,
                            model.job.name(),
                            "FAA-8083-21B",
                            "The ground stands up behind these places and falls towards the wind: "
                                    + String.join(", ", windward)
                                    + ". With 10 kt or more expect updraught on the way in. An"
                                    + " estimate from the terrain."));
        }
        return List.copyOf(all);
    }

    private String id(int place) {
        return model.places.get(place).id().value();
    }

    /** Hours with wind enough in which the place lies on that side of the ground. */
    private List<Integer> hoursOn(WindSide side, int place, List<DayState.Flown> lifts) {
        return flights.hours(lifts).stream()
                .filter(
                        slot ->
                                model.air().slots.get(slot).windMPerS()
                                        >= DRAUGHT_FROM_M_PER_S - 1e-9)
                .filter(slot -> model.sky().windSide(place, slot) == side)
                .toList();
    }

    private void lee(int place, List<DayState.Flown> lifts) {
        List<Integer> hours = hoursOn(WindSide.LEE, place, lifts);
        if (hours.isEmpty()) {
            return;
        }
        double mostMPerS =
                hours.stream()
                        .mapToDouble(slot -> model.air().slots.get(slot).windMPerS())
                        .max()
                        .orElse(0);
        all.add(
                new Finding(
                        FindingCode.LEE,
                        Severity.CAUTION,
                        id(place),
                        Figures.text(Math.ceil(Units.mPerSToKt(mostMPerS) - 1e-6), 0),
                        Figures.text(Units.mPerSToKt(DRAUGHT_FROM_M_PER_S), 0),
                        "kt",
                        "FAA-8083-21B",
                        flights.spans(hours)
                                + " the place lies in the lee of higher ground: expect"
                                + " downdraught and turbulence. An estimate from the terrain; no"
                                + " figure of the plan allows for it."));
    }

    private void fewCues(int place, double fallsAwayRad, List<DayState.Flown> lifts) {
        if (!RingRise.standsFree(fallsAwayRad)) {
            return;
        }
        // The load touches the ground before the line goes slack: so high the leg ends, as on the
        // card.
        Map<Hang, Double> mostUnderM = new HashMap<>();
        for (DayState.Flown one : lifts) {
            Trip trip = flights.trip(one);
            mostUnderM.merge(new Hang(one.line(), trip.standsUp()), trip.underM(), Math::max);
        }
        TreeSet<String> heights = new TreeSet<>();
        mostUnderM.forEach((hang, underM) -> heights.add(height(place, hang, underM)));
        all.add(
                new Finding(
                        FindingCode.FEW_HEIGHT_CUES,
                        Severity.NOTE,
                        id(place),
                        Figures.text(Math.toDegrees(fallsAwayRad), 0),
                        Figures.text(Math.toDegrees(RingRise.FREE_FROM_RAD), 0),
                        "°",
                        "PRACTICE",
                        "The ground falls away on "
                                + Figures.text(Math.toDegrees(fallsAwayRad), 0)
                                + "° of the horizon, so little tells the height. Planned altitude"
                                + " of the hook at set-down: "
                                + String.join("; ", heights)
                                + ". Set the altimeter to a known place, let those below call the"
                                + " last metres, and look the place over before first use."));
    }

    private String height(int place, Hang hang, double underM) {
        LineItem line = model.machine.lines().get(hang.line());
        double hookM = model.elevationAmslM[place] + line.lengthM() + underM;
        double loadM = Math.ceil(underM * 10 - 1e-6) / 10;
        return Figures.text(Math.ceil(hookM), 0)
                + " m ("
                + feet(hookM)
                + " ft) AMSL with the line "
                + line.name()
                + " and "
                + Figures.text(loadM, loadM == Math.rint(loadM) ? 0 : 1)
                + " m of load, "
                + feet(hookM + 20)
                + " and "
                + feet(hookM + 10)
                + " ft with 20 and 10 m to go";
    }

    private static String feet(double amslM) {
        return Figures.text(Math.ceil(Units.mToFt(amslM)), 0);
    }
}
