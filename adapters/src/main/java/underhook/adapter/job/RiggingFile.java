package underhook.adapter.job;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import underhook.adapter.job.Mentions.Family;
import underhook.adapter.job.text.Fields;
import underhook.adapter.job.text.Quantity;
import underhook.adapter.job.text.Range;
import underhook.adapter.job.text.Source.Found;
import underhook.core.finding.FindingCode;
import underhook.core.job.Rigging;

/** Reads the list of gear between belly hook and loads. */
final class RiggingFile {
    private static final Range MASS = Range.of(0, 5000, "between 0 and 5000 kg");
    private static final Range SOME_MASS = Range.above(0, 100_000, "above 0, at most 100000 kg");
    private static final Range FORCE = Range.above(0, 1e7, "above 0 and at most 10000 kN");
    private static final Range LEG = Range.above(0, 50, "above 0 and at most 50 m");
    private static final Range PART = Range.of(0, 1, "between 0 and 100 percent");
    private static final Range LEGS =
            Range.of(Math.PI / 6, Math.PI / 2, "between 30 and 90 degrees");

    private final Fields fields;
    private final Mentions mentions;

    private RiggingFile(Fields fields, Mentions mentions) {
        this.fields = fields;
        this.mentions = mentions;
    }

    /** The gear; empty, with faults, when anything is wrong. */
    static Optional<Rigging> read(Fields fields, Mentions mentions) {
        return new RiggingFile(fields, mentions).read();
    }

    private Optional<Rigging> read() {
        int before = fields.source().faults().count();
        Versions.check(fields);
        double factor =
                fields.number(
                        "breaking_factor",
                        Range.of(1, 99, "between 1 and 99"),
                        Rigging.NONE.breakingFactor());
        List<Rigging.Gear> stock = new ArrayList<>();
        List<Fields> rows = fields.mappings("gear");
        if (rows.isEmpty()) {
            fields.missing("gear");
        }
        rows.forEach(row -> readGear(row).ifPresent(stock::add));
        List<String> belly = names(fields, "belly");
        List<Rigging.SlingSet> sets = new ArrayList<>();
        fields.mappings("sets").forEach(row -> readSet(row).ifPresent(sets::add));
        fields.refuseUnknown();
        return fields.source().faults().count() > before
                ? Optional.empty()
                : Optional.of(new Rigging(factor, stock, belly, sets));
    }

    private List<String> names(Fields row, String field) {
        List<String> names = row.list(field);
        names.forEach(name -> mentions.mention(Family.GEAR, row, field, name));
        return names;
    }

    private Optional<Rigging.Gear> readGear(Fields row) {
        int before = row.source().faults().count();
        String name = row.text("name");
        mentions.declare(Family.GEAR, row, "name", name);
        int count = row.whole("count", Range.of(1, 1000, "between 1 and 1000"));
        Rigging.Material material = row.choice("material", Rigging.Material.class);
        OptionalDouble limitKg = row.findQuantity("limit", Quantity.MASS, SOME_MASS);
        OptionalDouble breakingN = row.findQuantity("breaking", Quantity.FORCE, FORCE);
        double massKg = row.quantity("mass", Quantity.MASS, MASS);
        Optional<Rigging.Dates> dates = readDates(row);
        if (limitKg.isEmpty() && breakingN.isEmpty()) {
            row.missing("limit_kg");
        }
        row.refuseUnknown();
        return row.source().faults().count() > before
                ? Optional.empty()
                : Optional.of(
                        new Rigging.Gear(name, count, material, limitKg, breakingN, massKg, dates));
    }

    /** All three dates or none. */
    private static Optional<Rigging.Dates> readDates(Fields row) {
        Optional<LocalDate> first = row.findDate("first_used");
        Optional<LocalDate> due = row.findDate("due");
        Optional<LocalDate> retire = row.findDate("retire");
        if (first.isEmpty() && due.isEmpty() && retire.isEmpty()) {
            return Optional.empty();
        }
        for (String field : List.of("first_used", "due", "retire")) {
            if (!row.has(field)) {
                row.missing(field);
            }
        }
        if (first.isEmpty() || due.isEmpty() || retire.isEmpty()) {
            return Optional.empty();
        }
        if (!first.get().isBefore(retire.get())) {
            row.fault(
                    FindingCode.FIELD_OUT_OF_RANGE,
                    "retire",
                    "does not come after first_used",
                    new Found(retire.get().toString(), "a day after " + first.get()));
            return Optional.empty();
        }
        return Optional.of(new Rigging.Dates(first.get(), due.get(), retire.get()));
    }

    private Optional<Rigging.SlingSet> readSet(Fields row) {
        int before = row.source().faults().count();
        String name = row.text("name");
        List<String> kinds = row.list("kinds");
        kinds.forEach(kind -> mentions.mention(Family.KIND, row, "kinds", kind));
        Rigging.Hitch hitch = row.choice("hitch", Rigging.Hitch.class);
        int legs = row.whole("legs", Range.of(1, 8, "between 1 and 8"));
        double angleRad = row.findQuantity("angle", Quantity.ANGLE, LEGS).orElse(Math.PI / 2);
        boolean rigid = row.yesNo("rigid", false);
        String leg = row.text("leg");
        mentions.mention(Family.GEAR, row, "leg", leg);
        List<String> upward = names(row, "upward");
        Optional<Rigging.Legs2> bridle = row.findMapping("bridle").flatMap(this::readBridle);
        boolean isBridle = hitch == Rigging.Hitch.BRIDLE;
        if (row.source().faults().count() == before && bridle.isPresent() != isBridle) {
            row.fault(
                    FindingCode.FIELD_OUT_OF_RANGE,
                    "bridle",
                    isBridle ? "is missing" : "belongs to the hitch bridle alone",
                    Found.allowing("the lengths and points of a bridle's two legs"));
        }
        row.refuseUnknown();
        return row.source().faults().count() > before
                ? Optional.empty()
                : Optional.of(
                        new Rigging.SlingSet(
                                name, kinds, hitch, legs, angleRad, rigid, leg, upward, bridle));
    }

    private Optional<Rigging.Legs2> readBridle(Fields row) {
        int before = row.source().faults().count();
        double length1M = row.quantity("leg1", Quantity.LENGTH, LEG);
        double length2M = row.quantity("leg2", Quantity.LENGTH, LEG);
        double at1 = row.quantity("at1", Quantity.FRACTION, PART);
        double at2 = row.quantity("at2", Quantity.FRACTION, PART);
        row.refuseUnknown();
        if (row.source().faults().count() == before && !(at1 < at2)) {
            row.fault(
                    FindingCode.FIELD_OUT_OF_RANGE,
                    "at2_percent",
                    "is not beyond at1_percent",
                    Found.allowing("two points in order from the butt"));
        }
        return row.source().faults().count() > before
                ? Optional.empty()
                : Optional.of(new Rigging.Legs2(length1M, length2M, at1, at2));
    }
}
