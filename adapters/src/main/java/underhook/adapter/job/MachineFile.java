package underhook.adapter.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import underhook.adapter.job.Mentions.Family;
import underhook.adapter.job.text.Fields;
import underhook.adapter.job.text.Node;
import underhook.adapter.job.text.Quantity;
import underhook.adapter.job.text.Range;
import underhook.adapter.job.text.Source.Found;
import underhook.core.finding.FindingCode;
import underhook.core.job.Balance;
import underhook.core.job.HoverTable;
import underhook.core.job.LineItem;
import underhook.core.job.Machine;

/** Reads the machine with its charts and lines. */
final class MachineFile {
    static final Range SPEED = Range.above(0, 150, "above 0 and at most 150 m/s");

    /** No ground under the highest pressure on record has a lower pressure altitude, m. @source PRACTICE */
    private static final double LOWEST_M = -1000;

    private static final Range MASS = Range.above(0, 50_000, "above 0 and at most 50000 kg");
    private static final Range SMALL_MASS = Range.of(0, 5000, "between 0 and 5000 kg");
    private static final Range REACH = Range.above(0, 40, "above 0 and at most 40 m");
    private static final Range FLOW = Range.above(0, 10, "above 0 and at most 600 kg/min");
    private static final Range TIME = Range.of(0, 86_400, "between 0 and 24 hours");
    private static final Range ARM = Range.of(-100, 100, "between -100 and 100 m");
    private static final Range LINE = Range.above(0, 400, "above 0 and at most 400 m");

    private static final Range DIAMETER = Range.above(0, 0.15, "above 0 and at most 0.15 m");

    private final Fields fields;
    private final Mentions mentions;
    private final int faultsBefore;

    private MachineFile(Fields fields, Mentions mentions) {
        this.fields = fields;
        this.mentions = mentions;
        this.faultsBefore = fields.source().faults().count();
    }

    /** The machine; empty, with faults, when anything is wrong. */
    static Optional<Machine> read(Fields fields, Mentions mentions) {
        return new MachineFile(fields, mentions).read();
    }

    private Optional<Machine> read() {
        Versions.check(fields);
        String name = fields.text("name");
        double rotorM = fields.quantity("rotor_radius", Quantity.LENGTH, REACH);
        double tailM = fields.quantity("tail_reach", Quantity.LENGTH, REACH);
        double emptyKg = fields.quantity("empty_mass", Quantity.MASS, MASS);
        double crewKg = fields.quantity("crew_mass", Quantity.MASS, MASS);
        double internalKg = fields.quantity("max_internal_mass", Quantity.MASS, MASS);
        double externalKg = fields.quantity("max_external_mass", Quantity.MASS, MASS);
        double hookKg = fields.quantity("hook_limit", Quantity.MASS, MASS);
        double fuelKg = fields.quantity("fuel_usable", Quantity.MASS, MASS);
        double gaugeKg = fields.quantity("fuel_gauge_spread", Quantity.MASS, SMALL_MASS);
        double burnKgPerS = fields.quantity("burn", Quantity.MASS_FLOW, FLOW);
        double hoverKgPerS = fields.quantity("hover_burn", Quantity.MASS_FLOW, FLOW);
        double startKg = fields.quantity("start_fuel", Quantity.MASS, SMALL_MASS);
        double reserveS = fields.quantity("reserve", Quantity.TIME, TIME);
        int seats = fields.whole("seats", Range.of(0, 60, "a whole number from 0 to 60"));
        double lineMPerS = fields.quantity("empty_line_speed", Quantity.SPEED, SPEED);
        double cabinMPerS = fields.quantity("cabin_speed", Quantity.SPEED, SPEED);
        double climbMPerS = fields.quantity("climb", Quantity.VERTICAL_SPEED, SPEED);
        double descentMPerS = fields.quantity("descent", Quantity.VERTICAL_SPEED, SPEED);
        Optional<HoverTable> hover = readHover();
        List<LineItem> lines = readLines();
        Optional<Balance> balance = fields.findMapping("balance").flatMap(this::readBalance);
        Machine.Body body = readBody(rotorM);
        Machine.PilotSide side =
                fields.findChoice("pilot_side", Machine.PilotSide.class)
                        .orElse(Machine.PilotSide.RIGHT);
        fields.refuseUnknown();
        if (hasFaults() || hover.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(
                new Machine(
                        name,
                        rotorM,
                        tailM,
                        emptyKg,
                        crewKg,
                        internalKg,
                        externalKg,
                        hookKg,
                        fuelKg,
                        gaugeKg,
                        burnKgPerS,
                        hoverKgPerS,
                        startKg,
                        reserveS,
                        seats,
                        lineMPerS,
                        cabinMPerS,
                        climbMPerS,
                        descentMPerS,
                        hover.get(),
                        lines,
                        balance,
                        body,
                        side));
    }

    private Machine.Body readBody(double rotorM) {
        Machine.Body assumed = Machine.Body.assumed(rotorM > 0 ? rotorM : 1);
        return new Machine.Body(
                fields.findQuantity("nose_reach", Quantity.LENGTH, REACH)
                        .orElse(assumed.noseReachM()),
                fields.findQuantity("body_half_width", Quantity.LENGTH, REACH)
                        .orElse(assumed.halfWidthM()),
                fields.findQuantity("tail_half_width", Quantity.LENGTH, REACH)
                        .orElse(assumed.tailHalfWidthM()),
                fields.findQuantity(
                                "rotor_above_hook",
                                Quantity.LENGTH,
                                Range.of(0, 10, "between 0 and 10 m"))
                        .orElse(assumed.rotorAboveHookM()));
    }

    private boolean hasFaults() {
        return fields.source().faults().count() > faultsBefore;
    }

    private Optional<HoverTable> readHover() {
        Optional<Fields> table = fields.findMapping("hover_table");
        if (table.isEmpty()) {
            if (fields.findNode("hover_table").isEmpty()) {
                fields.missing("hover_table");
            }
            return Optional.empty();
        }
        Fields chart = table.get();
        String source = chart.text("source");
        double stepKg = chart.quantity("rounded_down_to", Quantity.MASS, SMALL_MASS);
        List<Double> altitudesM = readAltitudes(chart);
        List<Double> temperaturesK = new ArrayList<>();
        List<List<Double>> massesKg = new ArrayList<>();
        List<Fields> rows = chart.mappings("rows");
        for (Fields row : rows) {
            double temperatureK =
                    row.quantity(
                            "oat",
                            Quantity.TEMPERATURE,
                            Range.of(180, 340, "between -93 and 66 degrees"));
            if (!temperaturesK.isEmpty()
                    && row.has("oat_c")
                    && !(temperatureK > temperaturesK.get(temperaturesK.size() - 1))) {
                row.fault(
                        FindingCode.FIELD_OUT_OF_RANGE,
                        "oat_c",
                        "is not above the row before",
                        new Found(row.text("oat_c", ""), "rows from cold to warm"));
            }
            temperaturesK.add(temperatureK);
            List<Double> rowKg = readMasses(row, altitudesM.size());
            if (!massesKg.isEmpty()) {
                refuseWarmRise(row, massesKg.get(massesKg.size() - 1), rowKg);
            }
            massesKg.add(rowKg);
            row.refuseUnknown();
        }
        if (rows.size() < 2 && chart.findNode("rows").isPresent()) {
            chart.fault(
                    FindingCode.CHART_HOLE,
                    "rows",
                    "has too few rows",
                    new Found(Integer.toString(rows.size()), "two temperatures or more"));
        } else if (rows.isEmpty()) {
            chart.missing("rows");
        }
        boolean countsBelow = chart.yesNo("first_altitude_counts_below", false);
        chart.refuseUnknown();
        if (hasFaults()) {
            return Optional.empty();
        }
        HoverTable printed = new HoverTable(altitudesM, temperaturesK, massesKg, stepKg, source);
        return Optional.of(
                countsBelow && altitudesM.get(0) > LOWEST_M ? withFirstBelow(printed) : printed);
    }

    /**
     * With what is printed at the lowest altitude counted in the denser air below it, where the machine lifts more:
     * high pressure near the sea lies below a table that begins at 0 m.
     */
    private static HoverTable withFirstBelow(HoverTable printed) {
        return new HoverTable(
                withFirst(LOWEST_M, printed.pressureAltitudeM()),
                printed.temperatureK(),
                printed.massKg().stream().map(row -> withFirst(row.get(0), row)).toList(),
                printed.roundedDownToKg(),
                printed.source() + "; below its first altitude what is printed there");
    }

    private static List<Double> withFirst(double first, List<Double> others) {
        List<Double> all = new ArrayList<>(List.of(first));
        all.addAll(others);
        return all;
    }

    private static List<Double> readAltitudes(Fields chart) {
        int before = chart.source().faults().count();
        Range range = Range.of(-2000, 12_000, "between -2000 and 12000 m");
        List<OptionalDouble> cells = chart.quantities("pressure_altitude", Quantity.LENGTH, range);
        List<Double> altitudesM = new ArrayList<>();
        for (OptionalDouble cell : cells) {
            double altitudeM = cell.orElse(Double.NEGATIVE_INFINITY);
            boolean ascends =
                    altitudesM.isEmpty() || altitudeM > altitudesM.get(altitudesM.size() - 1);
            if (cell.isEmpty() || !ascends) {
                chart.fault(
                        cell.isEmpty() ? FindingCode.CHART_HOLE : FindingCode.FIELD_OUT_OF_RANGE,
                        chart.presentName("pressure_altitude", Quantity.LENGTH),
                        cell.isEmpty() ? "has a hole" : "does not ascend",
                        Found.allowing("pressure altitudes from low to high"));
                return List.of();
            }
            altitudesM.add(altitudeM);
        }
        String name = chart.presentName("pressure_altitude", Quantity.LENGTH);
        if (altitudesM.size() < 2 && chart.source().faults().count() == before) {
            chart.fault(
                    FindingCode.CHART_HOLE,
                    name,
                    altitudesM.isEmpty() ? "is empty" : "has one value",
                    Found.allowing("two pressure altitudes or more"));
        }
        return altitudesM;
    }

    /** One printed row; a chart with a hole is not read across. */
    private static List<Double> readMasses(Fields row, int width) {
        int before = row.source().faults().count();
        List<OptionalDouble> cells = row.quantities("mass", Quantity.MASS, MASS);
        String name = row.presentName("mass", Quantity.MASS);
        if (cells.stream().anyMatch(OptionalDouble::isEmpty)) {
            row.fault(
                    FindingCode.CHART_HOLE,
                    name,
                    "has a hole",
                    Found.allowing("a mass for each pressure altitude"));
        } else if (row.source().faults().count() == before && width > 0 && cells.size() != width) {
            row.fault(
                    FindingCode.CHART_HOLE,
                    name,
                    "does not fit the pressure altitudes",
                    new Found(cells.size() + " values", width + " values"));
        }
        List<Double> massesKg = cells.stream().map(cell -> cell.orElse(0)).toList();
        refuseRise(row, name, massesKg);
        return massesKg;
    }

    /** Thinner air never carries more: a rise is a slip of the pen, and one that would kill. */
    private static void refuseRise(Fields row, String name, List<Double> massesKg) {
        for (int i = 1; i < massesKg.size(); i++) {
            if (massesKg.get(i - 1) > 0 && massesKg.get(i) > massesKg.get(i - 1)) {
                row.fault(
                        FindingCode.FIELD_OUT_OF_RANGE,
                        name,
                        "rises with the pressure altitude",
                        new Found(
                                "value " + (i + 1) + " above value " + i,
                                "masses that stay or fall from left to right"));
                return;
            }
        }
    }

    /**
     * The same of warmer air: above what the row before carries nothing is believed. Some charts do dip in the
     * cold, where the engine limits; they are refused all the same, because the warmest that may be (of
     * reports, of a forecast's spread) is taken for the worst.
     */
    private static void refuseWarmRise(Fields row, List<Double> colderKg, List<Double> massesKg) {
        for (int i = 0; i < Math.min(colderKg.size(), massesKg.size()); i++) {
            if (colderKg.get(i) > 0 && massesKg.get(i) > colderKg.get(i)) {
                row.fault(
                        FindingCode.FIELD_OUT_OF_RANGE,
                        row.presentName("mass", Quantity.MASS),
                        "rises with the temperature",
                        new Found(
                                "value " + (i + 1) + " above that of the row before",
                                "masses that stay or fall from cold to warm; where the chart really dips in the"
                                        + " cold, rows from its top on (colder is then outside the chart), or the"
                                        + " lesser for both"));
                return;
            }
        }
    }

    private static boolean isEmptyList(Node node) {
        return node instanceof Node.Items items && items.nodes().isEmpty();
    }

    private List<LineItem> readLines() {
        List<LineItem> lines = new ArrayList<>();
        List<Fields> rows = fields.mappings("lines");
        if (rows.isEmpty() && !fields.has("lines")) {
            fields.missing("lines");
        } else if (fields.findNode("lines").filter(MachineFile::isEmptyList).isPresent()) {
            fields.fault(
                    FindingCode.FIELD_MISSING,
                    "lines",
                    "is empty",
                    Found.allowing("a list of one line or more"));
        }
        for (Fields row : rows) {
            int before = row.source().faults().count();
            String name = row.text("name");
            double lengthM = row.quantity("length", Quantity.LENGTH, LINE);
            double massKg = row.quantity("mass", Quantity.MASS, MASS);
            double limitKg = row.quantity("limit", Quantity.MASS, MASS);
            LineItem.Make make = readMake(row, massKg);
            row.refuseUnknown();
            if (lines.stream().anyMatch(line -> line.name().equals(name))) {
                row.fault(
                        FindingCode.ID_DUPLICATE,
                        "name",
                        "is taken",
                        new Found(name, "a name of its own"));
            }
            if (row.source().faults().count() == before) {
                lines.add(new LineItem(name, lengthM, massKg, limitKg, make));
            }
        }
        return lines;
    }

    /** What a line is made of; what the job leaves out is assumed. */
    private LineItem.Make readMake(Fields row, double massKg) {
        LineItem.Make assumed = LineItem.Make.assumed(massKg > 0 ? massKg : 1);
        List<String> gear = row.list("gear");
        gear.forEach(item -> mentions.mention(Family.GEAR, row, "gear", item));
        OptionalDouble endKg = row.findQuantity("end", Quantity.MASS, MASS);
        if (endKg.isPresent() && endKg.getAsDouble() > massKg) {
            row.fault(
                    FindingCode.FIELD_OUT_OF_RANGE,
                    row.presentName("end", Quantity.MASS),
                    "is more than the whole line",
                    Found.allowing("at most its mass"));
        }
        return new LineItem.Make(
                endKg.orElse(assumed.endMassKg()),
                row.findQuantity("diameter", Quantity.LENGTH, DIAMETER).orElse(assumed.diameterM()),
                row.findQuantity("airspeed_limit", Quantity.SPEED, SPEED),
                gear);
    }

    private Optional<Balance> readBalance(Fields balance) {
        double emptyM = balance.quantity("empty_arm", Quantity.LENGTH, ARM);
        double crewM = balance.quantity("crew_arm", Quantity.LENGTH, ARM);
        double fuelM = balance.quantity("fuel_arm", Quantity.LENGTH, ARM);
        double cabinM = balance.quantity("cabin_arm", Quantity.LENGTH, ARM);
        double hookM = balance.quantity("hook_arm", Quantity.LENGTH, ARM);
        List<Balance.Limit> envelope = new ArrayList<>();
        List<Fields> rows = balance.mappings("envelope");
        for (Fields row : rows) {
            int before = row.source().faults().count();
            double massKg = row.quantity("mass", Quantity.MASS, MASS);
            double forwardM = row.quantity("forward_arm", Quantity.LENGTH, ARM);
            double aftM = row.quantity("aft_arm", Quantity.LENGTH, ARM);
            row.refuseUnknown();
            if (row.source().faults().count() > before) {
                continue;
            }
            boolean ascends =
                    envelope.isEmpty() || massKg > envelope.get(envelope.size() - 1).massKg();
            if (!ascends || forwardM > aftM) {
                row.fault(
                        FindingCode.FIELD_OUT_OF_RANGE,
                        ascends ? row.presentName("forward_arm", Quantity.LENGTH) : "mass_kg",
                        ascends ? "is behind the aft limit" : "does not ascend",
                        Found.allowing("rows ascending in mass, forward arm before aft arm"));
                continue;
            }
            envelope.add(new Balance.Limit(massKg, forwardM, aftM));
        }
        if (rows.size() < 2) {
            balance.fault(
                    FindingCode.FIELD_MISSING,
                    "envelope",
                    "has too few rows",
                    Found.allowing("two rows or more"));
        }
        balance.refuseUnknown();
        if (hasFaults()) {
            return Optional.empty();
        }
        return Optional.of(new Balance(emptyM, crewM, fuelM, cabinM, hookM, envelope));
    }
}
