/**
 * Terrain and canopy rasters: GeoTIFF, HGT (also zipped) and ESRI ASCII grids.
 *
 * <p>Only the window that a job needs is read and kept, in the raster's own grid. A cell that is nodata,
 * not a number, or beyond what ground on Earth can be (below -1000 m, above 9000 m) has no height. What a
 * file claims is checked against its length before anything of that size is allocated.
 */
@NullMarked
package underhook.adapter.terrain;

import org.jspecify.annotations.NullMarked;
