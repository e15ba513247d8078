package underhook.adapter.job;

import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import underhook.adapter.job.FileReference.StatedSystem;
import underhook.adapter.job.Mentions.Family;
import underhook.adapter.job.text.Fields;
import underhook.adapter.job.text.JobDay;
import underhook.adapter.job.text.Node;
import underhook.adapter.job.text.Quantity;
import underhook.adapter.job.text.Range;
import underhook.adapter.job.text.Source.At;
import underhook.adapter.job.text.Source.Found;
import underhook.core.finding.FindingCode;

/**
 * What job.yaml says.
 *
 * @param files files by the field that names them; a field is absent when its files cannot be had
 * @param isDayKnown whether date and zone were read
 * @param magneticVariationRad east positive, rad; empty when not stated
 */
record Head(
        Fields fields,
        String name,
        JobDay day,
        boolean isDayKnown,
        OptionalDouble magneticVariationRad,
        String machineStart,
        Map<String, List<FileReference>> files) {
    private static final List<String> REQUIRED =
            List.of("loads", "places", "machine", "weather", "crews", "rules", "terrain");
    private static final List<String> OPTIONAL =
            List.of(
                    "canopy",
                    "zones",
                    "wires",
                    "map",
                    "release_areas",
                    "hazards",
                    "rigging",
                    "overrides",
                    "emergency",
                    "learned",
                    "other_machines",
                    "notices",
                    "climate",
                    "archive",
                    "permits");
    static final List<String> ROLES = Stream.concat(REQUIRED.stream(), OPTIONAL.stream()).toList();
    private static final List<String> NAMED_VALUES =
            List.of("loads", "places", "zones", "wires", "map", "release_areas", "hazards");
    private static final List<String> MANY =
            List.of("terrain", "zones", "wires", "map", "release_areas", "other_machines");

    static Head read(Fields fields, Folder folder, Mentions mentions) {
        Versions.check(fields);
        String name = fields.text("name");
        boolean hasDate = fields.has("date");
        Optional<LocalDate> date = fields.findDate("date").filter(day -> hasSunTables(fields, day));
        if (!hasDate) {
            fields.missing("date");
        }
        Optional<ZoneId> zone = readZone(fields);
        OptionalDouble variationRad =
                fields.findQuantity(
                        "magnetic_variation",
                        Quantity.ANGLE,
                        Range.of(-Math.PI, Math.PI, "between -180 and 180 degrees"));
        String start = fields.id("machine_start");
        mentions.mention(Family.PLACE, fields, "machine_start", start);
        Optional<Node> system = fields.findNode("crs");
        StatedSystem common =
                system.map(node -> folder.readSystem(fields, node)).orElse(StatedSystem.NONE);
        Map<String, List<FileReference>> files = new HashMap<>();
        for (String role : REQUIRED) {
            if (fields.findNode(role).isEmpty()) {
                fields.missing(role);
            }
            readFiles(new Naming(fields, role, common), folder, files);
        }
        OPTIONAL.forEach(role -> readFiles(new Naming(fields, role, common), folder, files));
        fields.refuseUnknown();
        JobDay day = new JobDay(date.orElse(LocalDate.EPOCH), zone.orElse(ZoneOffset.UTC));
        return new Head(
                fields,
                name,
                day,
                date.isPresent() && zone.isPresent(),
                variationRad,
                start,
                files);
    }

    /** The sun's way is known for these years alone; a year far off is a slip of the pen. */
    private static boolean hasSunTables(Fields fields, LocalDate date) {
        boolean known = date.getYear() >= 1951 && date.getYear() <= 2098;
        if (!known) {
            fields.fault(
                    FindingCode.FIELD_OUT_OF_RANGE,
                    "date",
                    "is out of range",
                    new Found(date.toString(), "a day of the years 1951 to 2098"));
        }
        return known;
    }

    List<FileReference> files(String role) {
        return files.getOrDefault(role, List.of());
    }

    /** The same with another file in the place of one. */
    Head with(FileReference old, FileReference other) {
        Map<String, List<FileReference>> changed = new HashMap<>(files);
        changed.computeIfPresent(
                old.role(),
                (role, all) ->
                        all.stream()
                                .map(one -> one.name().equals(old.name()) ? other : one)
                                .toList());
        return new Head(fields, name, day, isDayKnown, magneticVariationRad, machineStart, changed);
    }

    Optional<FileReference> file(String role) {
        return files(role).stream().findFirst();
    }

    private static Optional<ZoneId> readZone(Fields fields) {
        String zone = fields.text("zone");
        if (zone.isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(ZoneId.of(zone));
        } catch (DateTimeException unknown) {
            fields.fault(
                    FindingCode.FIELD_UNREADABLE,
                    "zone",
                    "is no time zone",
                    new Found(zone, "an IANA name such as Europe/Vienna, or an offset as -01:00"));
            return Optional.empty();
        }
    }

    private record Naming(Fields fields, String role, StatedSystem common) {}

    private static void readFiles(
            Naming naming, Folder folder, Map<String, List<FileReference>> files) {
        Optional<Node> node = naming.fields.findNode(naming.role);
        if (node.isEmpty()) {
            return;
        }
        List<Node> named = List.of(node.get());
        if (node.get() instanceof Node.Items items) {
            named = items.nodes();
            if (!MANY.contains(naming.role) || named.isEmpty()) {
                naming.fields.fault(
                        FindingCode.FIELD_UNREADABLE,
                        naming.role,
                        named.isEmpty() ? "is an empty list" : "is a list",
                        Found.allowing("one file"));
                return;
            }
        }
        List<FileReference> references = new ArrayList<>();
        for (Node one : named) {
            readFile(naming, one, folder).ifPresent(references::add);
        }
        if (references.size() == named.size()) {
            files.put(naming.role, references);
        }
    }

    private static Optional<FileReference> readFile(Naming naming, Node node, Folder folder) {
        Fields fields = naming.fields;
        String shown = fields.shown(naming.role);
        if (node instanceof Node.Scalar scalar) {
            return folder.find(new At(node.line(), shown), scalar.text())
                    .map(path -> reference(naming, scalar.text(), path));
        }
        if (!(node instanceof Node.Mapping mapping)) {
            fields.source()
                    .fault(
                            FindingCode.FIELD_UNREADABLE,
                            new At(node.line(), shown),
                            "is " + node.kind(),
                            Found.allowing("a file"));
            return Optional.empty();
        }
        Fields details = fields.within(mapping);
        String name = details.text("file");
        Optional<Path> path =
                name.isEmpty()
                        ? Optional.empty()
                        : folder.find(new At(details.line(), shown + ".file"), name);
        details.text("licence", "");
        details.text("attribution", "");
        StatedSystem system =
                details.findNode("crs")
                        .map(own -> folder.readSystem(details, own))
                        .orElse(naming.common);
        askForDetails(naming.role, details, name);
        details.refuseUnknown();
        return path.map(
                there -> new FileReference(naming.role, name, there, system, Optional.of(details)));
    }

    /** Makes the details known that a file of this role may have; they are read with the file. */
    private static void askForDetails(String role, Fields details, String name) {
        if (role.equals("terrain") || role.equals("canopy")) {
            details.text("band", "");
        }
        if (role.equals("canopy")) {
            details.findNode("spread_m");
            details.findNode("spread_ft");
        }
        if (NAMED_VALUES.contains(role)) {
            details.text("layer", "");
            details.findNode("columns");
            details.findNode("defaults");
        }
        if (role.equals("archive")) {
            ArchiveFile.DETAILS.forEach(details::findNode);
        }
        if (role.equals("climate")) {
            ClimateFile.DETAILS.forEach(details::findNode);
        }
        boolean isYaml = name.endsWith(".yaml") || name.endsWith(".yml");
        if (role.equals("weather") && !isYaml) {
            WeatherFile.DETAILS.forEach(details::findNode);
        }
    }

    private static FileReference reference(Naming naming, String name, Path path) {
        return new FileReference(naming.role, name, path, naming.common, Optional.empty());
    }
}
