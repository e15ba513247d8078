/**
 * plan.geojson, plan.gpx and plan.kml: the plan for maps, receivers and globes.
 *
 * <p>Positions are WGS 84. Heights are metres above mean sea level in all three; RFC 7946 means them
 * above the ellipsoid, so plan.geojson says it in a member of its own. A round zone is drawn as a
 * polygon that encloses the circle. Sources: RFC 7946; GPX 1.1; KML 2.2 (OGC 07-147r2).
 */
@NullMarked
package underhook.adapter.mapfile;

import org.jspecify.annotations.NullMarked;
