package underhook.planner.route;

import org.locationtech.jts.geom.Geometry;

/**
 * Ground that the track may not enter.
 *
 * @param id id of the house, zone, road or wire
 * @param area already widened by what the rule asks for, in the local plane
 */
record Obstacle(String id, Geometry area) {}
