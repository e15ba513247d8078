package underhook.adapter.terrain;

import java.io.Closeable;
import java.io.IOException;
import java.util.Optional;

/** An open raster file. */
interface RasterSource extends Closeable {
    RasterGrid grid();

    /** Code or WKT of its reference system, when the file states one. */
    Optional<String> systemText() throws RasterFault;

    /** Cells of a window, as stored but for nodata, scale and unit. */
    Cells read(RasterGrid.Window window) throws IOException, RasterFault;
}
