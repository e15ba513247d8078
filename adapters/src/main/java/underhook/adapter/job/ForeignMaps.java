package underhook.adapter.job;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import underhook.adapter.job.Mentions.Family;
import underhook.adapter.job.text.Fields;
import underhook.adapter.job.text.Source;
import underhook.adapter.job.text.Source.Found;
import underhook.app.port.MapBox;
import underhook.app.port.MapReader;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.job.MapFeature;
import underhook.core.job.Wire;

/**
 * Takes over maps whose words have a public meaning, as far as they touch the job's box.
 *
 * <p>Such a file has ids of its own. They are kept; only where one is taken already, by a file of the
 * job or by a map before, the file's name is put in front. What two maps have alike, as two extracts
 * along their common edge, is taken once. Mutable while it reads.
 */
final class ForeignMaps {
    private static final List<String> MEANINGLESS = List.of("crs", "layer", "columns", "defaults");

    private final List<MapReader> readers;
    private final Mentions mentions;
    private final List<Finding> findings;
    private final Map<String, MapFeature> features = new HashMap<>();
    private final Map<String, Wire> wires = new HashMap<>();

    ForeignMaps(List<MapReader> readers, Mentions mentions, List<Finding> findings) {
        this.readers = readers;
        this.mentions = mentions;
        this.findings = findings;
    }

    /** Who reads a file; empty when it is none of these. */
    static Optional<MapReader> findReader(List<MapReader> readers, FileReference file) {
        return file.role().equals("map")
                ? readers.stream().filter(reader -> reader.reads(file.name())).findFirst()
                : Optional.empty();
    }

    /** Reads a file into the lists; the places' own boxes are two when they lie astride the date line. */
    void read(FileReference file, Source source, List<MapBox> boxes, MapFiles into) {
        file.details().ifPresent(ForeignMaps::refuseMeaningless);
        MapReader reader = findReader(readers, file).orElseThrow();
        long passedOver = 0;
        for (MapBox box : boxes) {
            MapReader.Contents contents = reader.read(file.path(), file.name(), box);
            source.faults().addAll(contents.faults());
            passedOver += contents.passedOver();
            if (contents.faults().isEmpty()) {
                contents.features().forEach(one -> add(one, file, into));
                contents.wires().forEach(one -> add(one, file, into));
            }
        }
        if (passedOver > 0) {
            findings.add(
                    new Finding(
                            FindingCode.MAP_PARTLY_READ,
                            Severity.NOTE,
                            file.name(),
                            Long.toString(passedOver),
                            "",
                            "",
                            file.name(),
                            "Of what the map holds here, "
                                    + passedOver
                                    + " things were not understood or do not matter."));
        }
    }

    private static void refuseMeaningless(Fields details) {
        for (String name : MEANINGLESS) {
            if (details.has(name)) {
                details.fault(
                        FindingCode.FIELD_UNKNOWN,
                        name,
                        "says nothing for a map whose words have a meaning of their own",
                        Found.allowing("file, licence and attribution"));
            }
        }
    }

    private void add(MapFeature found, FileReference file, MapFiles into) {
        MapFeature old = features.putIfAbsent(found.id(), found);
        if (old != null && old.outline().equals(found.outline())) {
            return;
        }
        String id = freeId(found.id(), file);
        mentions.declare(Family.FEATURE, id, file.name());
        into.features()
                .add(
                        new MapFeature(
                                id,
                                found.kind(),
                                found.shape(),
                                found.outline(),
                                found.bufferM(),
                                found.crossing(),
                                found.heightM(),
                                found.heightEstimated(),
                                file.name()));
    }

    private void add(Wire found, FileReference file, MapFiles into) {
        Wire old = wires.putIfAbsent(found.id(), found);
        if (old != null && old.supports().equals(found.supports())) {
            return;
        }
        String id = freeId(found.id(), file);
        mentions.declare(Family.WIRE, id, file.name());
        into.wires()
                .add(
                        new Wire(
                                id,
                                found.supports(),
                                found.highestM(),
                                found.lateralM(),
                                found.live(),
                                found.voltageV(),
                                found.crossing(),
                                found.crossingAboveM(),
                                found.crossingOffSquareRad(),
                                found.registered(),
                                found.hanging(),
                                file.name()));
    }

    private String freeId(String id, FileReference file) {
        List<String> candidates = new ArrayList<>(List.of(id, stem(file.name()) + ":" + id));
        for (int i = 2; mentions.isTaken(candidates.get(0)); i++) {
            candidates.remove(0);
            candidates.add(stem(file.name()) + ":" + id + "-" + i);
        }
        return candidates.get(0);
    }

    /** The name without folders and ending, with nothing in it that an id may not have. */
    private static String stem(String name) {
        String last = name.substring(name.lastIndexOf('/') + 1);
        int dot = last.indexOf('.');
        return (dot > 0 ? last.substring(0, dot) : last).replaceAll("[\\s;|+,\"\\p{Cntrl}]", "-");
    }
}
