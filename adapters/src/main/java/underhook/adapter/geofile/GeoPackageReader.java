package underhook.adapter.geofile;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import underhook.adapter.geofile.GeoPackageTables.Layer;
import underhook.adapter.geofile.GeoPackageTables.StatedSystem;
import underhook.adapter.geofile.source.Faults;
import underhook.adapter.geofile.source.Unreadable;
import underhook.app.port.Fault;
import underhook.app.port.FeatureReader;
import underhook.app.port.ReferenceSystem;
import underhook.app.port.ReferenceSystems;
import underhook.app.port.Wgs84;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Outcome;

/** Reads a table of a GeoPackage, with or without geometry. */
public final class GeoPackageReader implements FeatureReader {
    private static final int MOST_ROWS = 1_000_000;
    private static final long MOST_BYTES = 1L << 30;

    private final ReferenceSystems systems;

    /**
     * Makes a reader.
     *
     * @param systems where the systems that files state are looked up
     */
    public GeoPackageReader(ReferenceSystems systems) {
        this.systems = systems;
    }

    @Override
    public boolean reads(String fileName) {
        return fileName.toLowerCase(Locale.ROOT).endsWith(".gpkg");
    }

    /** The number of a row, as GDAL and the common desktop programs call it: every table must have one. */
    @Override
    public Set<String> usualNames() {
        return Set.of("fid", "ogc_fid", "objectid");
    }

    @Override
    public List<Fault> read(Request request, Consumer<StatedFeature> sink) {
        Faults faults = new Faults(request.statedName());
        try (GeoPackageTables tables = GeoPackageTables.open(request.file())) {
            Layer layer = tables.find(request.layer());
            new Table(meaning(tables, layer, request), tables.columns(layer.table()), faults)
                    .read(tables, sink);
        } catch (Unreadable e) {
            faults.add(0, e);
        } catch (SQLException e) {
            faults.add(0, Unreadable.file("is damaged, or asks for too much work"));
        }
        return faults.list();
    }

    /** What the coordinates of a layer mean, and whether job.yaml says so rather than the file. */
    private record Meaning(Layer layer, ReferenceSystem system, boolean isStated) {}

    private Meaning meaning(GeoPackageTables tables, Layer layer, Request request)
            throws SQLException, Unreadable {
        if (request.referenceSystem().isPresent()) {
            return new Meaning(layer, request.referenceSystem().get(), true);
        }
        // Without geometry there is nothing that a system could say.
        boolean hasGeometry = !layer.geometryColumn().isEmpty();
        return new Meaning(
                layer, hasGeometry ? systemOf(tables, layer.systemId()) : Wgs84.SYSTEM, false);
    }

    private ReferenceSystem systemOf(GeoPackageTables tables, int id)
            throws SQLException, Unreadable {
        String remedy = "crs stated for this file in job.yaml";
        Optional<StatedSystem> stated = tables.system(id);
        if (stated.isEmpty() || stated.get().texts().isEmpty()) {
            throw Unreadable.of(
                            FindingCode.REFERENCE_SYSTEM_MISSING,
                            "carries no reference system and none is stated")
                    .found("srs_id " + id)
                    .allowing(remedy);
        }
        String why = "";
        for (String text : stated.get().texts()) {
            Outcome<ReferenceSystem> found = systems.find(text);
            if (found.isDone()) {
                return found.getValue();
            }
            String reason = found.findings().get(0).message().replaceFirst("\\.$", "");
            why = why.isEmpty() ? reason : why;
        }
        throw Unreadable.of(
                        FindingCode.REFERENCE_SYSTEM_UNKNOWN,
                        "its reference system is not known. " + why)
                .found(stated.get().name())
                .allowing(remedy);
    }

    /**
     * A table that is being read. Mutable.
     *
     * <p>Where the system counts in feet nobody says what a third coordinate counts in, so it is left out.
     */
    private static final class Table {
        private final Meaning meaning;
        private final Map<String, String> columns;
        private final Faults faults;
        private final boolean hasMetres;
        private int rows;
        private long bytes;

        Table(Meaning meaning, Map<String, String> columns, Faults faults) {
            this.meaning = meaning;
            this.columns = columns;
            this.faults = faults;
            hasMetres =
                    meaning.system.isGeographic()
                            || Math.abs(meaning.system.metresPerUnit() - 1) < 1e-12;
        }

        void read(GeoPackageTables tables, Consumer<StatedFeature> sink) throws SQLException {
            tables.eachRow(
                    meaning.layer.table(),
                    row -> {
                        rows++;
                        if (rows > MOST_ROWS || bytes > MOST_BYTES) {
                            faults.add(rows, tooLarge());
                            return false;
                        }
                        readRow(row, sink);
                        return true;
                    });
        }

        private static Unreadable tooLarge() {
            return Unreadable.of(FindingCode.TOO_LARGE, "is too large")
                    .allowing("at most " + MOST_ROWS + " rows and 1 GB in one table");
        }

        private void readRow(ResultSet row, Consumer<StatedFeature> sink) throws SQLException {
            Map<String, String> values = new LinkedHashMap<>();
            List<Part> parts = new ArrayList<>();
            try {
                int column = 0;
                for (Map.Entry<String, String> each : columns.entrySet()) {
                    column++;
                    Object cell = row.getObject(column);
                    if (each.getKey().equalsIgnoreCase(meaning.layer.geometryColumn())) {
                        parts.addAll(readGeometry(cell));
                    } else if (cell instanceof byte[] blob) {
                        bytes += blob.length;
                    } else {
                        String text = CellText.of(cell, each.getValue());
                        bytes += text.length();
                        values.put(each.getKey(), text);
                    }
                }
                new Row(rows, values, meaning.system).hand(parts, sink);
            } catch (Unreadable e) {
                faults.add(rows, e);
            }
        }

        private List<Part> readGeometry(Object cell) throws Unreadable {
            if (cell == null) {
                return List.of();
            }
            if (!(cell instanceof byte[] blob)) {
                throw Unreadable.field("geometry", "is no GeoPackage geometry");
            }
            bytes += blob.length;
            GeometryBlob.Geometry geometry = GeometryBlob.read(blob, hasMetres);
            boolean isOther =
                    geometry.systemId() > 0 && geometry.systemId() != meaning.layer.systemId();
            if (isOther && !meaning.isStated) {
                throw Unreadable.range("geometry", "states another reference system than its table")
                        .found("srs_id " + geometry.systemId())
                        .allowing("srs_id " + meaning.layer.systemId());
            }
            return geometry.parts();
        }
    }
}
