package underhook.core.wire;

import java.util.List;
import underhook.core.job.Wire;
import underhook.core.job.WireBufferRule;
import underhook.core.job.WireKind;
import underhook.core.unit.Units;

/**
 * Least distances to a live power line by its voltage, from the tables that cranes work by. They are no
 * limit for helicopters but a floor under the operator's own distance; the line owner decides.
 *
 * <p>Upper bounds of the classes belong to them. Metres are rounded up to whole centimetres. High up air
 * insulates less, so the distance grows by a factor.
 */
public final class WireBuffers {
    /** What stands beside every distance from here. */
    public static final String NOTE = "crane table as a floor; the line owner decides";

    /** Where the tables end: above it they ask the owner. @source OSHA-1926.1408 table A */
    public static final double LARGEST_V = 1_000_000;

    private record Row(int upToV, int distanceFt) {}

    /** With a load. @source OSHA-1926.1408 table A; above 1000 kV it asks the owner */
    private static final List<Row> CRANE =
            List.of(
                    new Row(50_000, 10),
                    new Row(200_000, 15),
                    new Row(350_000, 20),
                    new Row(500_000, 25),
                    new Row(750_000, 35),
                    new Row(1_000_000, 45));

    /** Travelling without a load. @source OSHA-1926.1411 table T; above 1000 kV it asks the owner */
    private static final List<Row> CRANE_TRAVEL =
            List.of(
                    new Row(750, 4),
                    new Row(50_000, 6),
                    new Row(345_000, 10),
                    new Row(750_000, 16),
                    new Row(1_000_000, 20));

    private record Height(double upToM, double distanceFactor) {}

    /** @source UFC-3-560-01 table 3-2; above 3000 m 29 CFR 1910.269, from memory */
    private static final List<Height> HEIGHTS =
            List.of(
                    new Height(900, 1.00),
                    new Height(1200, 1.02),
                    new Height(1500, 1.05),
                    new Height(1800, 1.08),
                    new Height(2100, 1.11),
                    new Height(2400, 1.14),
                    new Height(2700, 1.17),
                    new Height(3000, 1.20),
                    new Height(3600, 1.25),
                    new Height(4200, 1.30),
                    new Height(4800, 1.35),
                    new Height(5400, 1.39),
                    new Height(6000, 1.44));

    /** Beyond the table nothing is extended: the distance is doubled. @source PRACTICE */
    private static final double HIGHER_FACTOR = 2;

    private WireBuffers() {}

    /**
     * Least distance to a live power line by a table, m; 0 by the operator's own rule.
     *
     * @param voltageV nominal voltage, V; 0 when unknown, which counts as the largest class
     * @return m, rounded up to centimetres; above the table's last class its largest distance
     */
    public static double distanceM(WireBufferRule rule, double voltageV) {
        return switch (rule) {
            case OWN -> 0;
            case CRANE -> distanceM(CRANE, voltageV);
            case CRANE_TRAVEL -> distanceM(CRANE_TRAVEL, voltageV);
        };
    }

    private static double distanceM(List<Row> table, double voltageV) {
        if (!(voltageV >= 0 && voltageV < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("voltageV (" + voltageV + ") must not be negative.");
        }
        Row row = table.get(table.size() - 1);
        for (int i = table.size() - 1; i >= 0 && voltageV > 0; i--) {
            row = voltageV <= table.get(i).upToV() ? table.get(i) : row;
        }
        return Math.ceil(Units.ftToM(row.distanceFt()) * 100 - 1e-9) / 100;
    }

    /** What a distance is multiplied with so high up. */
    public static double altitudeFactor(double elevationAmslM) {
        return HEIGHTS.stream()
                .filter(height -> elevationAmslM <= height.upToM())
                .mapToDouble(Height::distanceFactor)
                .findFirst()
                .orElse(HIGHER_FACTOR);
    }

    /** Whether the table speaks of this wire: a live power line. */
    public static boolean counts(Wire wire) {
        return wire.live() && wire.hanging().kind() == WireKind.POWER;
    }

    /**
     * Least distance that anything that flies keeps to a wire: the operator's own or the table's,
     * whichever is larger, m.
     *
     * @param ownM the operator's own distance, m
     * @param elevationAmslM the wire's highest point, m AMSL
     */
    public static double needM(Wire wire, WireBufferRule rule, double ownM, double elevationAmslM) {
        if (!counts(wire)) {
            return ownM;
        }
        double tableM = distanceM(rule, wire.voltageV()) * altitudeFactor(elevationAmslM);
        return Math.max(ownM, tableM);
    }
}
