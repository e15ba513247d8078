package underhook.core.aircraft;

import java.util.List;
import java.util.stream.Collectors;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Outcome;
import underhook.core.finding.Severity;
import underhook.core.job.HoverTable;
import underhook.core.unit.Units;

/**
 * Hover mass out of ground effect, looked up in the manual's table.
 *
 * <p>Linear in pressure altitude and temperature between the printed points (bilinear). Every printed mass
 * is cut at the mass limit <em>before</em> the interpolation: beside the cut the surface then lies below
 * the machine's own, so the error is on the safe side. Results are rounded down to whole kilograms. Wind is
 * never credited. Outside the printed table there is no answer: nothing is extrapolated.
 *
 * @source DERIVED linear interpolation of a printed table, as in FAA-PHAK chapter 10
 */
public final class HoverChart {
    /** A milligram is let pass, so that a printed value comes back as printed. */
    private static final double ROUNDING_SLACK_KG = 1e-6;

    private final double[] pressureAltitudeM;
    private final double[] temperatureK;
    private final double[][] massKg;
    private final String source;

    private HoverChart(HoverTable table, double capMassKg) {
        pressureAltitudeM =
                table.pressureAltitudeM().stream().mapToDouble(Double::doubleValue).toArray();
        temperatureK = table.temperatureK().stream().mapToDouble(Double::doubleValue).toArray();
        massKg =
                table.massKg().stream()
                        .map(
                                row ->
                                        row.stream()
                                                .mapToDouble(mass -> Math.min(mass, capMassKg))
                                                .toArray())
                        .toArray(double[][]::new);
        source = table.source();
    }

    /**
     * The chart of a table.
     *
     * @param capMassKg most mass allowed with an external load, kg, above 0
     * @throws IllegalArgumentException if the cap is not above 0
     */
    public static HoverChart of(HoverTable table, double capMassKg) {
        if (!(capMassKg > 0 && capMassKg < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("capMassKg (" + capMassKg + ") must be above 0.");
        }
        return new HoverChart(table, capMassKg);
    }

    /** Whether the printed table covers this air, ends included; false for NaN. */
    public boolean covers(double pressureAltitudeM, double temperatureK) {
        double[] heights = this.pressureAltitudeM;
        double[] temperatures = this.temperatureK;
        return pressureAltitudeM >= heights[0]
                && pressureAltitudeM <= heights[heights.length - 1]
                && temperatureK >= temperatures[0]
                && temperatureK <= temperatures[temperatures.length - 1];
    }

    /**
     * Hover mass, whole kg rounded down, for loops that asked {@link #covers} first.
     *
     * @throws IllegalArgumentException outside the printed table
     */
    public double tableMassKg(double pressureAltitudeM, double temperatureK) {
        if (!covers(pressureAltitudeM, temperatureK)) {
            throw new IllegalArgumentException(
                    "pressureAltitudeM ("
                            + pressureAltitudeM
                            + ") and temperatureK ("
                            + temperatureK
                            + ") must lie inside the hover table.");
        }
        double[] heights = this.pressureAltitudeM;
        double[] temperatures = this.temperatureK;
        int column = 0;
        while (column < heights.length - 2 && pressureAltitudeM >= heights[column + 1]) {
            column++;
        }
        int row = 0;
        while (row < temperatures.length - 2 && temperatureK >= temperatures[row + 1]) {
            row++;
        }
        double across =
                (pressureAltitudeM - heights[column]) / (heights[column + 1] - heights[column]);
        double down =
                (temperatureK - temperatures[row]) / (temperatures[row + 1] - temperatures[row]);
        double upper = mixKg(massKg[row][column], massKg[row][column + 1], across);
        double lower = mixKg(massKg[row + 1][column], massKg[row + 1][column + 1], across);
        return Math.floor(mixKg(upper, lower, down) + ROUNDING_SLACK_KG);
    }

    /**
     * Hover mass out of ground effect, whole kg rounded down.
     *
     * @param pressureAltitudeM pressure altitude of the hover, m
     * @param temperatureK air temperature there, K
     * @return the mass, or refused with CHART_RANGE outside the printed table
     */
    public Outcome<Double> massKg(double pressureAltitudeM, double temperatureK) {
        if (covers(pressureAltitudeM, temperatureK)) {
            return Outcome.done(tableMassKg(pressureAltitudeM, temperatureK));
        }
        return Outcome.refused(rangeFinding("hover-chart", pressureAltitudeM, temperatureK));
    }

    /**
     * The STOP finding for air that the printed table does not cover, about the given subject. Found is the pressure
     * altitude, m, or else the temperature, °C, that is outside; its limit the end of the table that it is beyond.
     */
    public Finding rangeFinding(String subject, double pressureAltitudeM, double temperatureK) {
        ChartAxis first = listBeyond(pressureAltitudeM, temperatureK).get(0);
        return new Finding(
                FindingCode.CHART_RANGE,
                Severity.STOP,
                subject,
                first.value(),
                first.limit(),
                first.unit(),
                source,
                "The hover table does not cover this air: "
                        + sayBeyond(pressureAltitudeM, temperatureK)
                        + ".");
    }

    /** What of this air is outside the printed table, and what the table covers, as part of a sentence. */
    public String sayBeyond(double pressureAltitudeM, double temperatureK) {
        return listBeyond(pressureAltitudeM, temperatureK).stream()
                .map(ChartAxis::say)
                .collect(Collectors.joining("; "));
    }

    /** How far this air is outside the printed table, as a share of its axes together; 0 within. */
    public double beyondFraction(double pressureAltitudeM, double temperatureK) {
        return listAxes(pressureAltitudeM, temperatureK).stream()
                .mapToDouble(ChartAxis::beyondFraction)
                .sum();
    }

    private List<ChartAxis> listBeyond(double pressureAltitudeM, double temperatureK) {
        return listAxes(pressureAltitudeM, temperatureK).stream()
                .filter(ChartAxis::isBeyond)
                .toList();
    }

    private List<ChartAxis> listAxes(double pressureAltitudeM, double temperatureK) {
        double[] heights = this.pressureAltitudeM;
        double[] temperatures = this.temperatureK;
        return List.of(
                new ChartAxis(
                        "pressure altitude",
                        pressureAltitudeM,
                        heights[0],
                        heights[heights.length - 1],
                        "m"),
                new ChartAxis(
                        "temperature",
                        Units.kelvinToCelsius(temperatureK),
                        Units.kelvinToCelsius(temperatures[0]),
                        Units.kelvinToCelsius(temperatures[temperatures.length - 1]),
                        "°C"));
    }

    private static double mixKg(double fromKg, double toKg, double shareFraction) {
        return fromKg + shareFraction * (toKg - fromKg);
    }
}
