package underhook.adapter.job;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import underhook.adapter.job.Mentions.Family;
import underhook.adapter.job.text.Fields;
import underhook.adapter.job.text.Fields.Measured;
import underhook.adapter.job.text.Quantity;
import underhook.adapter.job.text.Range;
import underhook.adapter.job.text.Source;
import underhook.adapter.job.text.Source.At;
import underhook.adapter.job.text.Source.Found;
import underhook.adapter.job.text.Table;
import underhook.core.finding.FindingCode;
import underhook.core.job.Load;
import underhook.core.job.Load.After;
import underhook.core.job.LoadId;
import underhook.core.job.MassStatus;
import underhook.core.job.PlaceId;
import underhook.core.unit.Units;

/** Reads the load list. */
final class LoadsFile {
    private static final Range MASS = Range.above(0, 20_000, "above 0 and at most 20000 kg");
    private static final Range SIDE = Range.above(0, 100, "above 0 and at most 100 m");
    private static final Range DRAG = Range.above(0, 1000, "above 0 and at most 1000 m2");

    private final Source source;
    private final Mentions mentions;
    private final List<LoadRow> rows = new ArrayList<>();

    /** A load and where its row is. */
    private record LoadRow(Load load, Fields fields) {}

    private LoadsFile(Source source, Mentions mentions) {
        this.source = source;
        this.mentions = mentions;
    }

    /** Every load whose row has no fault. */
    static List<Load> read(FileReference file, Source source, Mentions mentions) {
        LoadsFile reader = new LoadsFile(source, mentions);
        if (file.isTable()) {
            Table.read(file.toTable(source), reader::readRow);
        } else {
            source.fault(
                    FindingCode.FILE_UNREADABLE,
                    new At(0, ""),
                    "has an unknown ending",
                    new Found(file.name(), ".csv or .xlsx"));
        }
        reader.refuseCircles();
        return reader.rows.stream().map(LoadRow::load).toList();
    }

    private void readRow(Fields fields) {
        int before = source.faults().count();
        String id = fields.id("id");
        mentions.declare(Family.LOAD, fields, "id", id);
        String kind = fields.text("kind");
        mentions.mention(Family.KIND, fields, "kind", kind);
        String from = readPlace(fields, "from");
        String to = readPlace(fields, "to");
        Mass mass = readMass(fields);
        double lengthM = fields.quantity("length", Quantity.LENGTH, SIDE);
        double widthM = fields.quantity("width", Quantity.LENGTH, SIDE);
        double heightM = fields.quantity("height", Quantity.LENGTH, SIDE);
        OptionalDouble dragM2 = fields.findQuantity("drag_area", Quantity.AREA, DRAG);
        String material = fields.text("material", "");
        String dangerousGoods = fields.text("dangerous_goods", "").strip();
        List<After> after = readAfter(fields, id);
        List<String> combineWith = readOthers(fields, "combine_with", id);
        boolean anotherDay = fields.yesNo("another_day", false);
        String remarks = fields.text("remarks", "");
        if (!from.isEmpty() && from.equals(to)) {
            fields.fault(
                    FindingCode.FIELD_OUT_OF_RANGE,
                    "to",
                    "is where the load comes from",
                    new Found(to, "another place"));
        }
        if (source.faults().count() == before) {
            Load load =
                    new Load(
                            new LoadId(id),
                            kind,
                            new PlaceId(from),
                            new PlaceId(to),
                            mass.status,
                            mass.massKg,
                            mass.typed,
                            lengthM,
                            widthM,
                            heightM,
                            dragM2,
                            material,
                            dangerousGoods,
                            after,
                            combineWith.stream().map(LoadId::new).toList(),
                            anotherDay,
                            remarks);
            rows.add(new LoadRow(load, fields));
        }
    }

    private String readPlace(Fields fields, String field) {
        String id = fields.id(field);
        mentions.mention(Family.PLACE, fields, field, id);
        return id;
    }

    private record Mass(MassStatus status, OptionalDouble massKg, String typed) {}

    /** A blank mass is missing, whatever its status says; a mass with a doubt in it is estimated. */
    private Mass readMass(Fields fields) {
        Optional<Measured> mass = fields.findEstimable("mass", Quantity.MASS, MASS);
        MassStatus status =
                fields.findChoice("mass_status", MassStatus.class).orElse(MassStatus.WEIGHED);
        if (mass.isEmpty()) {
            return new Mass(MassStatus.MISSING, OptionalDouble.empty(), "");
        }
        if (status == MassStatus.MISSING) {
            fields.fault(
                    FindingCode.FIELD_OUT_OF_RANGE,
                    "mass_status",
                    "says missing though there is a mass",
                    new Found(mass.get().typed(), "weighed, estimated, or no mass"));
        }
        return new Mass(
                mass.get().estimated() ? MassStatus.ESTIMATED : status,
                OptionalDouble.of(mass.get().value()),
                mass.get().typed());
    }

    private List<After> readAfter(Fields fields, String own) {
        List<After> after = new ArrayList<>();
        for (String word : fields.list("after")) {
            String[] parts = word.split("\\+", -1);
            String id = parts[0].strip();
            double waitS = 0;
            boolean isGood = parts.length <= 2 && id.matches("[^\\s,\"]{1,40}");
            if (isGood && parts.length == 2) {
                isGood = parts[1].strip().matches("0|[1-9][0-9]{0,3}");
                waitS = isGood ? Units.minutesToS(Double.parseDouble(parts[1].strip())) : 0;
            }
            if (!isGood) {
                fields.fault(
                        FindingCode.FIELD_UNREADABLE,
                        "after",
                        "is no load with minutes",
                        new Found(word, "loads such as L29+120;L05"));
                continue;
            }
            checkOther(fields, "after", new String[] {id, own});
            after.add(new After(new LoadId(id), waitS));
        }
        return after;
    }

    private List<String> readOthers(Fields fields, String field, String own) {
        List<String> ids = fields.ids(field);
        ids.forEach(id -> checkOther(fields, field, new String[] {id, own}));
        return ids;
    }

    private void checkOther(Fields fields, String field, String[] idAndOwn) {
        mentions.mention(Family.LOAD, fields, field, idAndOwn[0]);
        if (idAndOwn[0].equals(idAndOwn[1])) {
            fields.fault(
                    FindingCode.ID_UNKNOWN,
                    field,
                    "is the load itself",
                    new Found(idAndOwn[0], "other loads"));
        }
    }

    /** Takes away whatever waits for nothing that is left; what stays waits for itself. */
    private void refuseCircles() {
        List<LoadRow> left = new ArrayList<>(rows);
        boolean shrunk = true;
        while (shrunk) {
            List<LoadId> ids = left.stream().map(row -> row.load.id()).toList();
            Set<LoadId> waiting = new HashSet<>(ids);
            shrunk =
                    left.removeIf(
                            row ->
                                    row.load.after().stream()
                                            .noneMatch(after -> waiting.contains(after.load())));
        }
        // Those that only wait for a circle go too: nothing in the rest waits for them.
        shrunk = true;
        while (shrunk) {
            Set<LoadId> awaited = new HashSet<>();
            left.forEach(row -> row.load.after().forEach(after -> awaited.add(after.load())));
            shrunk = left.removeIf(row -> !awaited.contains(row.load.id()));
        }
        for (LoadRow row : left) {
            row.fields.fault(
                    FindingCode.FIELD_OUT_OF_RANGE,
                    "after",
                    "waits for itself through others",
                    new Found(row.load.after().get(0).load().value(), "an order without a circle"));
        }
    }
}
