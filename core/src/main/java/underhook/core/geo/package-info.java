/**
 * Places on the ground: WGS 84 positions, the job's local plane, heights, slope, sun.
 *
 * <p>The local plane is a transverse Mercator with scale 1 centred on the job, so that distances and
 * bearings within a day's reach are true to a few millimetres per kilometre. Only this package turns
 * degrees into metres.
 */
@NullMarked
package underhook.core.geo;

import org.jspecify.annotations.NullMarked;
