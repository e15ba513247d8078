/**
 * Reference systems of coordinates, by EPSG code or by WKT text.
 *
 * <p>Projections and datum shifts are proj4j's, with its copy of the EPSG data set. Always x is easting
 * or longitude and y is northing or latitude, whatever the axis order of the system. A datum without a
 * known shift to WGS 84 is refused: taking it as WGS 84 would move a place by a hundred metres or more.
 */
@NullMarked
package underhook.adapter.crs;

import org.jspecify.annotations.NullMarked;
