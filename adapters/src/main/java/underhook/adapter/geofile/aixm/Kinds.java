package underhook.adapter.geofile.aixm;

import java.util.Map;
import java.util.Optional;
import java.util.Set;
import underhook.core.job.WireKind;

/**
 * What the types of obstacles mean for a leg.
 *
 * @source AIXM-5.1.1 CodeVerticalStructureType
 */
final class Kinds {
    /** Lines that stand on the ground; whatever else is a line, hangs. */
    private static final Set<String> STANDING =
            Set.of(
                    "AG_EQUIP",
                    "ANTENNA",
                    "ARCH",
                    "BRIDGE",
                    "BUILDING",
                    "CONTROL_TOWER",
                    "COOLING_TOWER",
                    "CRANE",
                    "DAM",
                    "DOME",
                    "ELEVATOR",
                    "FENCE",
                    "GATE",
                    "GRAIN_ELEVATOR",
                    "INDUSTRIAL_SYSTEM",
                    "LIGHTHOUSE",
                    "MONUMENT",
                    "NATURAL_GAS_SYSTEM",
                    "NATURAL_HIGHPOINT",
                    "NAVAID",
                    "NUCLEAR_REACTOR",
                    "POLE",
                    "POWER_PLANT",
                    "REFINERY",
                    "RIG",
                    "SIGN",
                    "SPIRE",
                    "STACK",
                    "STADIUM",
                    "TANK",
                    "TERMINAL",
                    "TOWER",
                    "TREE",
                    "URBAN",
                    "VEGETATION",
                    "WALL",
                    "WATER_TOWER",
                    "WINDMILL",
                    "WINDMILL_FARMS",
                    "WINDSOCK");

    private static final Map<String, WireKind> WIRES =
            Map.of(
                    "TRANSMISSION_LINE", WireKind.POWER,
                    "TRANSMISSION_LINE_TOWER", WireKind.POWER,
                    "POWERLINE_PYLON", WireKind.POWER,
                    "ELECTRICAL_SYSTEM", WireKind.POWER,
                    "CABLE_CAR", WireKind.CABLEWAY,
                    "TRAMWAY", WireKind.CABLEWAY);

    /**
     * Height where none is stated, m above ground. A register of obstacles beyond aerodromes begins at 100 m,
     * so every default is above it.
     *
     * @source ICAO-10066 appendix 8, obstacle data for area 1 (100 m); PRACTICE above what is commonly built
     *     of each type; the longest spans of cableways pass some 300 m above their valleys
     */
    private static final Map<String, Double> HEIGHTS_M =
            Map.of(
                    "ANTENNA", 300.0,
                    "TOWER", 300.0,
                    "STACK", 300.0,
                    "CABLE_CAR", 300.0,
                    "TRAMWAY", 300.0,
                    "CATENARY", 300.0,
                    "WINDMILL", 250.0,
                    "WINDMILL_FARMS", 250.0);

    private static final double OTHER_HEIGHT_M = 150;

    private Kinds() {}

    /** What hangs, when a line of this type does; a catenary hangs from what the whole is. */
    static Optional<WireKind> wire(String type, String wholeType) {
        if (STANDING.contains(type)) {
            return Optional.empty();
        }
        WireKind ofWhole = WIRES.getOrDefault(wholeType, WireKind.OTHER);
        return Optional.of(WIRES.getOrDefault(type, ofWhole));
    }

    static double heightM(String type) {
        return HEIGHTS_M.getOrDefault(type, OTHER_HEIGHT_M);
    }
}
