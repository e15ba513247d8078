package underhook.app.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import underhook.app.desk.DayLooks.Look;
import underhook.core.job.LineItem;
import underhook.core.job.Load;
import underhook.core.job.LoadId;
import underhook.core.job.Machine;
import underhook.core.job.PlaceId;
import underhook.core.plan.Drop;
import underhook.core.plan.Limit;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.unit.Units;
import underhook.planner.order.DayLook.AirThere;
import underhook.planner.order.DayLook.TablePoint;

/** How the limits of a lift came about: what went in, by which formula or table point, and what eats it. */
public final class LimitHow {
    private final Look look;
    private final Step step;
    private final Rotation rotation;
    private final Machine machine;
    private final LineItem line;

    /** A number that goes in. */
    public record Input(String name, double value, String unit, String source) {}

    /**
     * How a number came about.
     *
     * @param tablePoint the printed values it lies between, in words; empty where no table is used
     * @param eats what takes from the limit, in the order it is added up
     */
    public record How(List<Input> inputs, String formula, String tablePoint, List<Input> eats) {
        public How {
            inputs = List.copyOf(inputs);
            eats = List.copyOf(eats);
        }
    }

    private LimitHow(Look look, Step step, Rotation rotation) {
        this.look = look;
        this.step = step;
        this.rotation = rotation;
        this.machine = look.job().job().machine();
        this.line =
                machine.lines().stream()
                        .filter(one -> Math.abs(one.lengthM() - step.lineLengthM()) < 0.05)
                        .findFirst()
                        .orElse(machine.lines().get(0));
    }

    /** How one limit of a lift came about. */
    public static How of(Look look, Lifts.Lift lift, Limit limit) {
        Step step = look.plan().plan().steps().get(lift.step());
        return new LimitHow(look, step, lift.rotation()).of(limit);
    }

    private How of(Limit limit) {
        String code = limit.code().split(" ", 2)[0];
        return switch (code) {
            case "HOVER_MASS" -> hoverMass(limit);
            case "EXTERNAL_MASS_LIMIT" ->
                    new How(List.of(), ADDED, "", gross(limit.value(), "margins"));
            case "HOOK_LIMIT" -> new How(List.of(), "loads + line", "", hook(limit.value(), true));
            case "LINE_LIMIT" -> new How(List.of(), "loads", "", hook(limit.value(), false));
            case "BALANCE_FUEL" -> balance();
            case "LINE_LENGTH" -> lineLength(limit);
            case "WIND_MEAN", "WIND_GUST", "WIND_SPREAD" -> wind(limit);
            default -> new How(List.of(), "as stated by " + limit.source(), "", List.of());
        };
    }

    private static final String ADDED = "empty machine + pilot + line + loads + margins + fuel";

    private How hoverMass(Limit limit) {
        PlaceId from = step.hookedUpAt();
        PlaceId to = rotation.drops().isEmpty() ? step.to() : lastDrop().place();
        Optional<AirThere> there = look.day().findAir(to, lastReleased());
        Optional<AirThere> here = look.day().findAir(from, rotation.hookedAt());
        // The lower of the two ends is the limit.
        boolean atFrom =
                here.isPresent()
                        && (there.isEmpty()
                                || here.get().hoverMassKg() < there.get().hoverMassKg());
        Optional<AirThere> air = atFrom ? here : there;
        List<Input> inputs = air.map(one -> inputs(atFrom ? from : to, one)).orElse(List.of());
        String point = air.flatMap(AirThere::table).map(LimitHow::words).orElse("");
        return new How(
                inputs,
                "table, linear between its points, rounded down; against " + ADDED,
                point,
                gross(limit.value(), "margin for construction and estimated masses"));
    }

    private How balance() {
        List<Input> parts = new ArrayList<>();
        machine.balance()
                .ifPresent(
                        arms -> {
                            parts.add(arm("arm of the empty machine", arms.emptyArmM()));
                            parts.add(arm("arm of the pilot", arms.crewArmM()));
                            parts.add(arm("arm of the fuel", arms.fuelArmM()));
                            parts.add(arm("arm of the hook", arms.hookArmM()));
                        });
        parts.addAll(gross(0, ""));
        return new How(
                parts,
                "most fuel in the tank from which moments over masses keep the envelope down to the"
                        + " reserve; against fuel as read + gauge spread",
                "",
                List.of());
    }

    private static Input arm(String name, double armM) {
        return new Input(name, armM, "m", "machine");
    }

    /** The end that a limit holds at; empty for the whole lift. */
    private static Optional<PlaceId> placeOf(Limit limit) {
        int at = limit.code().indexOf(" at ");
        return at < 0 ? Optional.empty() : Optional.of(new PlaceId(limit.code().substring(at + 4)));
    }

    private Drop lastDrop() {
        return rotation.drops().get(rotation.drops().size() - 1);
    }

    private java.time.Instant lastReleased() {
        return rotation.drops().isEmpty() ? step.endAt() : lastDrop().releasedAt();
    }

    private List<Input> inputs(PlaceId place, AirThere air) {
        String weather = look.job().job().weather().source();
        return List.of(
                new Input("elevation of " + place.value(), air.elevationAmslM(), "m", "terrain"),
                new Input("QNH", Units.paToHpa(air.qnhPa()), "hPa", weather),
                new Input("pressure altitude", air.pressureAltitudeM(), "m", "standard atmosphere"),
                new Input(
                        "temperature at " + place.value(),
                        Units.kelvinToCelsius(air.temperatureK()),
                        "°C",
                        weather),
                new Input("hover mass", air.hoverMassKg(), "kg", machine.hover().source()));
    }

    private static String words(TablePoint point) {
        return String.format(
                Locale.ROOT,
                "%.0f to %.0f m, %.0f to %.0f °C: %.0f, %.0f; %.0f, %.0f kg",
                point.lowerAltitudeM(),
                point.upperAltitudeM(),
                Units.kelvinToCelsius(point.lowerTemperatureK()),
                Units.kelvinToCelsius(point.upperTemperatureK()),
                point.massKg().get(0),
                point.massKg().get(1),
                point.massKg().get(2),
                point.massKg().get(3));
    }

    /** The parts of the mass in the air; what they do not explain is margin. */
    private List<Input> gross(double wholeKg, String rest) {
        List<Input> parts = new ArrayList<>();
        parts.add(new Input("empty machine", machine.emptyMassKg(), "kg", "machine"));
        parts.add(new Input("pilot", machine.crewMassKg(), "kg", "machine"));
        parts.add(new Input("line", line.massKg(), "kg", "machine"));
        addLoads(parts);
        parts.add(new Input("fuel read at hook-up", rotation.fuelAtHookKg(), "kg", "plan"));
        if (machine.fuelGaugeSpreadKg() > 0) {
            parts.add(new Input("fuel gauge spread", machine.fuelGaugeSpreadKg(), "kg", "machine"));
        }
        addRest(parts, wholeKg, rest);
        return parts;
    }

    private List<Input> hook(double wholeKg, boolean withLine) {
        List<Input> parts = new ArrayList<>();
        addLoads(parts);
        if (withLine) {
            parts.add(new Input("line", line.massKg(), "kg", "machine"));
        }
        addRest(parts, wholeKg, "margins");
        return parts;
    }

    private void addLoads(List<Input> parts) {
        for (LoadId id : rotation.loads()) {
            Load load = look.job().job().getLoad(id);
            parts.add(
                    new Input(
                            load.id() + ", " + load.massStatus().name().toLowerCase(Locale.ROOT),
                            load.massKg().orElse(0),
                            "kg",
                            "loads"));
        }
        if (rotation.ballastKg() > 0) {
            parts.add(new Input("ballast", rotation.ballastKg(), "kg", "plan"));
        }
    }

    private static void addRest(List<Input> parts, double wholeKg, String name) {
        double knownKg = parts.stream().mapToDouble(Input::value).sum();
        if (wholeKg - knownKg > 0.05) {
            parts.add(new Input(name, wholeKg - knownKg, "kg", "rules"));
        }
    }

    private How lineLength(Limit limit) {
        List<Input> inputs = new ArrayList<>();
        PlaceId setDown = rotation.drops().isEmpty() ? step.to() : lastDrop().place();
        PlaceId place = placeOf(limit).orElse(setDown);
        inputs.add(new Input("line", line.lengthM(), "m", "machine"));
        if (limit.limit() > line.lengthM() + 0.05) {
            inputs.add(
                    new Input(
                            "load standing under it",
                            limit.limit() - line.lengthM(),
                            "m",
                            "loads"));
        }
        double clearanceM = look.job().job().rules().distances().rotorClearanceM();
        return new How(
                inputs,
                "trees + rotor clearance + rise of the ground behind the tail at " + place.value(),
                "",
                List.of(
                        new Input("rotor clearance", clearanceM, "m", "rules"),
                        new Input(
                                "trees and rise behind the tail",
                                limit.value() - clearanceM,
                                "m",
                                "canopy, terrain")));
    }

    private How wind(Limit limit) {
        PlaceId place = placeOf(limit).orElse(step.to());
        boolean isStart = place.equals(step.hookedUpAt());
        Optional<AirThere> air =
                look.day().findAir(place, isStart ? rotation.hookedAt() : lastReleased());
        double exposure = look.job().job().getPlace(place).exposureFactor();
        List<Input> inputs = new ArrayList<>();
        String weather = look.job().job().weather().source();
        air.ifPresent(
                one -> {
                    inputs.add(
                            new Input(
                                    "mean wind of the forecast",
                                    Units.mPerSToKt(one.windMPerS() / exposure),
                                    "kt",
                                    weather));
                    inputs.add(
                            new Input(
                                    "gust of the forecast",
                                    Units.mPerSToKt(one.gustMPerS() / exposure),
                                    "kt",
                                    weather));
                });
        inputs.add(new Input("exposure of " + place.value(), exposure, "", "places"));
        String what = limit.code().startsWith("WIND_SPREAD") ? "(gust - mean)" : "forecast";
        return new How(inputs, what + " times exposure", "", List.of());
    }
}
