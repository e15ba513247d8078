package underhook.adapter.osm;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import underhook.core.job.WireKind;

/**
 * What a wire is to us.
 *
 * @param voltageV nominal voltage, V, the highest of several; 0 where none is stated or it is no power
 *     line
 * @param highestM highest wire at a support whose own height is not known, m
 */
record WireMeaning(WireKind kind, double voltageV, double highestM) {
    /** What one line of the table says. */
    private record Row(String key, Set<String> values, WireKind kind, double highestM) {}

    /**
     * Key, values, kind, highest wire above ground at a support where none is stated, and why. A height of
     * 0 is found by the voltage.
     *
     * @source OSM-WIKI pages of "Key:power", "Key:communication", "Key:telecom", "Key:aerialway",
     *     "Key:electrified"; PRACTICE heights, tall ones of each kind
     */
    private static final String TABLE =
            """
            power|line yes|POWER|0|hangs on towers
            power|minor_line|POWER|0|hangs on poles
            electrified|contact_line yes|POWER|15|contact wire, and feeders on top of its masts
            trolley_wire|yes|POWER|15|contact wire over a road
            communication|line|TELEPHONE|15|wooden poles
            telecom|line|TELEPHONE|15|wooden poles
            aerialway|cable_car yes|CABLEWAY|120|the tallest pylons of all
            aerialway|gondola goods zip_line mixed_lift|CABLEWAY|60|pylons on ridges
            aerialway|chair_lift canopy|CABLEWAY|40|pylons of detachable lifts
            aerialway|drag_lift t-bar j-bar platter rope_tow|CABLEWAY|20|tows
            """;

    private static final List<Row> ROWS = TABLE.lines().map(WireMeaning::row).toList();

    private static final Set<String> OVERHEAD = Set.of("overhead", "overground", "outdoor");

    /** Least voltage that is believed as volts, V: on towers, elsewhere. @source PRACTICE */
    private static final double LEAST_ON_TOWERS_V = 1000;

    private static final double LEAST_ELSEWHERE_V = 100;

    private static Row row(String line) {
        String[] cells = line.split("\\|");
        return new Row(
                cells[0],
                Set.of(cells[1].split(" ")),
                WireKind.valueOf(cells[2]),
                Double.parseDouble(cells[3]));
    }

    /** All wires that a way means, mostly none. */
    static List<WireMeaning> of(Tagged tags) {
        List<WireMeaning> wires = new ArrayList<>();
        if (tags.isBelowGround()) {
            return wires;
        }
        for (Row row : ROWS) {
            if (tags.has(row.key, row.values)
                    && wires.stream().noneMatch(w -> w.kind == row.kind)) {
                wires.add(meaning(row, tags));
            }
        }
        if (wires.isEmpty()) {
            overheadCable(tags).ifPresent(wires::add);
        }
        return wires;
    }

    private static WireMeaning meaning(Row row, Tagged tags) {
        boolean onTowers = tags.has("power", Set.of("line", "yes"));
        double voltageV =
                row.kind == WireKind.POWER
                        ? Stated.voltageV(
                                tags.get("voltage"),
                                onTowers ? LEAST_ON_TOWERS_V : LEAST_ELSEWHERE_V)
                        : 0;
        double usualM = row.highestM > 0 ? row.highestM : byVoltageM(voltageV, onTowers);
        // Nobody says which height of a line is meant, so it only counts where it is the greater.
        double statedM = Stated.heightOf(tags.toMap()).map(Stated::heightM).orElse(0.0);
        return new WireMeaning(row.kind, voltageV, Math.max(usualM, statedM));
    }

    /**
     * Tall towers of each class with the earth wire on top. Towers usually measure 15 to 55 m; crossings
     * of rivers and fjords may be far taller and have their heights stated as a rule.
     *
     * @source PRACTICE tall ones of each class of voltage
     */
    private static double byVoltageM(double voltageV, boolean onTowers) {
        if (voltageV == 0) {
            return onTowers ? 90 : 25;
        }
        if (voltageV <= 1_000) {
            return 15;
        }
        if (voltageV <= 45_000) {
            return 25;
        }
        if (voltageV <= 150_000) {
            return 60;
        }
        return voltageV <= 300_000 ? 75 : 90;
    }

    /** Cables lie in the ground unless they say that they hang. */
    private static Optional<WireMeaning> overheadCable(Tagged tags) {
        boolean hangs = OVERHEAD.contains(tags.get("location"));
        if (hangs && tags.has("power", Set.of("cable", "minor_cable"))) {
            double voltageV = Stated.voltageV(tags.get("voltage"), LEAST_ELSEWHERE_V);
            return Optional.of(
                    new WireMeaning(WireKind.POWER, voltageV, byVoltageM(voltageV, false)));
        }
        boolean isTelecom =
                tags.has("communication", Set.of("cable"))
                        || tags.has("telecom", Set.of("cable"))
                        || tags.has("utility", Set.of("telecom", "communication"));
        boolean isBuilt = !tags.get("man_made").isEmpty() || !tags.get("building").isEmpty();
        boolean saysWire =
                hangs || (tags.get("communication").isEmpty() && tags.get("telecom").isEmpty());
        return isTelecom && saysWire && !isBuilt
                ? Optional.of(new WireMeaning(WireKind.TELEPHONE, 0, 15))
                : Optional.empty();
    }
}
