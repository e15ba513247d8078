package underhook.adapter.terrain;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import underhook.app.port.Fault;
import underhook.app.port.RasterReader;
import underhook.app.port.ReferenceSystem;
import underhook.app.port.ReferenceSystems;
import underhook.core.finding.FindingCode;

/** Reads rasters by what their name ends in. */
public final class RasterFiles implements RasterReader {
    private static final double WIDEST_HALF_M = 100_000;

    private final ReferenceSystems systems;

    public RasterFiles(ReferenceSystems systems) {
        this.systems = systems;
    }

    @Override
    public Reading read(Request request) {
        if (!(request.halfWidthM() > 0)) {
            throw new IllegalArgumentException(
                    "halfWidthM (" + request.halfWidthM() + ") must be above 0.");
        }
        try (RasterSource source = open(request)) {
            return new Reading(Optional.of(lay(source, request)), List.of());
        } catch (RasterFault e) {
            return failed(e.toFault(request.statedName()));
        } catch (NoSuchFileException e) {
            return failed(
                    new Fault(
                            FindingCode.FILE_MISSING,
                            request.statedName(),
                            0,
                            "",
                            "there is no such file",
                            "",
                            ""));
        } catch (IOException e) {
            return failed(
                    RasterFault.unreadable("cannot be read", String.valueOf(e.getMessage()), "")
                            .toFault(request.statedName()));
        }
    }

    private static Reading failed(Fault fault) {
        return new Reading(Optional.empty(), List.of(fault));
    }

    private static RasterSource open(Request request) throws IOException, RasterFault {
        Path file = request.file();
        if (!Files.exists(file)) {
            throw new NoSuchFileException(file.toString());
        }
        String name = request.statedName().toLowerCase(Locale.ROOT);
        if (name.endsWith(".tif") || name.endsWith(".tiff")) {
            return GeoTiffSource.open(file, request.band());
        }
        if (!request.band().isBlank() && !request.band().strip().equals("1")) {
            throw RasterFault.unreadable("has no such band", request.band(), "1");
        }
        if (name.endsWith(".hgt") || name.endsWith(".zip")) {
            return HgtSource.open(file, request.statedName());
        }
        if (name.endsWith(".asc")) {
            return AsciiGridSource.open(file);
        }
        throw RasterFault.unreadable(
                "is no raster that is read", request.statedName(), ".tif, .hgt, .zip or .asc");
    }

    private RasterHeightField lay(RasterSource source, Request request)
            throws IOException, RasterFault {
        if (request.halfWidthM() > WIDEST_HALF_M) {
            throw RasterFault.tooLarge(
                    "the job reaches too far",
                    request.halfWidthM() + " m",
                    "at most " + WIDEST_HALF_M + " m from its middle");
        }
        ReferenceSystem system = systemOf(source, request);
        PlaneToGrid mapping;
        try {
            mapping =
                    PlaneToGrid.of(
                            new PlaneToGrid.Exact(request.frame(), system, source.grid()),
                            request.halfWidthM());
        } catch (IllegalArgumentException e) {
            throw outside(system.name());
        }
        return new RasterHeightField(
                mapping, source.read(windowOf(mapping, source.grid(), system)));
    }

    private ReferenceSystem systemOf(RasterSource source, Request request) throws RasterFault {
        if (request.referenceSystem().isPresent()) {
            return request.referenceSystem().get();
        }
        Optional<String> text = source.systemText();
        if (text.isEmpty()) {
            throw new RasterFault(
                    FindingCode.REFERENCE_SYSTEM_MISSING,
                    0,
                    "carries no reference system that can be read and none is stated",
                    new String[] {"", "state crs beside the file in job.yaml"});
        }
        return systems.find(text.get())
                .<Optional<ReferenceSystem>>fold((s, f) -> Optional.of(s), f -> Optional.empty())
                .orElseThrow(
                        () ->
                                new RasterFault(
                                        FindingCode.REFERENCE_SYSTEM_UNKNOWN,
                                        0,
                                        "its reference system is not known",
                                        new String[] {
                                            text.get()
                                                    .substring(
                                                            0, Math.min(80, text.get().length())),
                                            "state crs beside the file in job.yaml"
                                        }));
    }

    private static RasterGrid.Window windowOf(
            PlaneToGrid mapping, RasterGrid grid, ReferenceSystem system) throws RasterFault {
        double[] b = mapping.bounds();
        // Two cells more for the interpolation and for the bend between the nodes.
        double left = Math.max(0, Math.floor(b[0]) - 2);
        double right = Math.min(grid.columns() - 1.0, Math.ceil(b[1]) + 2);
        double top = Math.max(0, Math.floor(b[2]) - 2);
        double bottom = Math.min(grid.rows() - 1.0, Math.ceil(b[3]) + 2);
        if (!(left <= right && top <= bottom)) {
            throw outside(system.name());
        }
        RasterGrid.Window window =
                new RasterGrid.Window(
                        (int) left, (int) top, (int) (right - left) + 1, (int) (bottom - top) + 1);
        window.checkSize();
        return window;
    }

    private static RasterFault outside(String system) {
        return new RasterFault(
                FindingCode.OUTSIDE_TERRAIN,
                0,
                "does not reach the job. Perhaps its reference system is another",
                new String[] {system, ""});
    }
}
