/**
 * Legs over the ground: the shortest way whose strip keeps off what it may not pass, the way in and out
 * of a place against the wind, and heights that clear ground, trees and wires.
 *
 * <p>In plan a leg is found on a visibility graph over buffered polygons; between straight pieces it
 * turns on the spot (turn radius is not modelled). A wire that may be crossed is crossed near a right
 * angle. Along the way the hook keeps the least height that clears everything, within the climb and
 * descent of the machine, and never descends to climb again.
 */
@NullMarked
package underhook.planner.route;

import org.jspecify.annotations.NullMarked;
