/**
 * Shapes with named values from GeoPackage, KML, KMZ and GPX files, whose meaning the job states.
 *
 * <p>x is easting or longitude and y is northing or latitude, whatever the axis order of the system. KML and
 * GPX are WGS 84 by their standards. Nothing that a file points to is fetched and nothing stored in it is run.
 * Sources: OGC 12-128r17 (GeoPackage), OGC 07-147r2 (KML), the GPX 1.0 and 1.1 schemas.
 */
@NullMarked
package underhook.adapter.geofile;

import org.jspecify.annotations.NullMarked;
