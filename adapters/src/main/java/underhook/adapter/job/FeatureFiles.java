package underhook.adapter.job;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import underhook.adapter.job.Feature.Shape;
import underhook.adapter.job.text.Fields;
import underhook.adapter.job.text.Renaming;
import underhook.adapter.job.text.Source;
import underhook.adapter.job.text.Source.At;
import underhook.adapter.job.text.Source.Found;
import underhook.adapter.job.text.Table;
import underhook.app.port.Fault;
import underhook.app.port.FeatureReader;
import underhook.app.port.FeatureReader.Request;
import underhook.app.port.FeatureReader.StatedFeature;
import underhook.app.port.ReferenceSystem;
import underhook.core.finding.FindingCode;

/** Reads the features of a file: GeoJSON, tables of points, and what the readers at hand know. */
final class FeatureFiles {
    private final List<FeatureReader> readers;

    FeatureFiles(List<FeatureReader> readers) {
        this.readers = List.copyOf(readers);
    }

    /** Hands over every feature; of one whose outline has a fault at most the properties. */
    void read(FileReference file, Source source, Consumer<Feature> sink) {
        Optional<FeatureReader> reader =
                readers.stream().filter(one -> one.reads(file.name())).findFirst();
        if (file.isTable()) {
            PointColumns columns = new PointColumns(file);
            Table.Input table = file.toTable(source);
            Table.read(
                    file.role().equals("places") ? table : table.orEmpty("id"),
                    fields -> sink.accept(row(fields, columns)));
        } else if (file.isGeoJson()) {
            refuseLayer(file, source);
            Renaming renaming = file.renaming();
            GeoJsonFile.read(file, source, renaming, sink);
            renaming.check();
        } else if (reader.isPresent()) {
            Renaming renaming = file.renaming();
            new Pass(file, source, renaming, sink).read(reader.get());
            renaming.check();
        } else {
            source.fault(
                    FindingCode.FILE_UNREADABLE,
                    new At(0, ""),
                    "has an unknown ending",
                    new Found(file.name(), ".csv, .xlsx, .geojson, .gpkg, .kml or .gpx"));
        }
    }

    private static void refuseLayer(FileReference file, Source source) {
        if (!file.detail("layer").isEmpty()) {
            source.fault(
                    FindingCode.FIELD_UNKNOWN,
                    new At(0, "layer"),
                    "is stated for a file that has one table",
                    new Found(file.detail("layer"), "no layer"));
        }
    }

    private static Feature row(Fields fields, PointColumns columns) {
        List<Position> outline = columns.read(fields).stream().toList();
        return new Feature(fields.line(), fields, 0, Shape.POINT, outline, false, new HashSet<>());
    }

    /** One reading of one file through a reader. Mutable. */
    private static final class Pass {
        private final FileReference file;
        private final Source source;
        private final Renaming renaming;
        private final Consumer<Feature> sink;
        private final Set<String> unknownSaid = new HashSet<>();
        private final PointColumns columns;
        private boolean isAnyThere;

        Pass(FileReference file, Source source, Renaming renaming, Consumer<Feature> sink) {
            this.file = file;
            this.source = source;
            this.renaming = renaming;
            this.sink = sink;
            this.columns = new PointColumns(file);
        }

        /** A file's own system counts before the one for all files, but not before its own fault. */
        void read(FeatureReader reader) {
            unknownSaid.addAll(reader.usualNames());
            Optional<ReferenceSystem> stated = file.system().system();
            if (file.system().isOwn() && stated.isEmpty()) {
                return; // its system is a fault already
            }
            Optional<ReferenceSystem> own = file.system().isOwn() ? stated : Optional.empty();
            List<Fault> faults = reader.read(request(own), this::take);
            boolean hasNone =
                    faults.stream()
                            .anyMatch(
                                    fault -> fault.code() == FindingCode.REFERENCE_SYSTEM_MISSING);
            if (hasNone && !isAnyThere && own.isEmpty() && stated.isPresent()) {
                faults = reader.read(request(stated), this::take);
            }
            source.faults().addAll(faults);
        }

        private Request request(Optional<ReferenceSystem> system) {
            return new Request(file.path(), file.name(), system, file.detail("layer"));
        }

        private void take(StatedFeature stated) {
            isAnyThere = true;
            Fields fields = Fields.of(source, renaming, stated.line(), stated.values());
            boolean hasShape = stated.shape() != FeatureReader.Shape.NONE;
            sink.accept(
                    new Feature(
                            stated.line(),
                            fields,
                            stated.part(),
                            hasShape ? Shape.valueOf(stated.shape().name()) : Shape.POINT,
                            hasShape ? outline(stated) : columns.read(fields).stream().toList(),
                            stated.hasHoles(),
                            unknownSaid));
        }

        private List<Position> outline(StatedFeature stated) {
            List<Position> outline =
                    stated.outline().stream()
                            .map(
                                    corner ->
                                            new Position.Pair(
                                                    stated.system(), corner.x(), corner.y()))
                            .map(
                                    pair ->
                                            Position.of(
                                                    source,
                                                    new At(stated.line(), "geometry"),
                                                    pair))
                            .flatMap(Optional::stream)
                            .toList();
            return outline.size() == stated.outline().size() ? outline : List.of();
        }
    }
}
