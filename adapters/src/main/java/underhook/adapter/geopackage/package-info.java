/**
 * plan.gpkg: the plan as a GeoPackage 1.3 for any GIS, by plain SQL.
 *
 * <p>Positions are WGS 84 longitude and latitude; the third coordinate of places and legs is metres above
 * mean sea level. Caution, attributions and licence stand in the metadata of the whole file.
 * Source: OGC 12-128r17, clauses 1.1.1 (file), 1.1.2 (reference systems), 1.1.3 (contents), 2.1
 * (features), 2.4 (attributes) and annex F.8 (metadata).
 */
@NullMarked
package underhook.adapter.geopackage;

import org.jspecify.annotations.NullMarked;
