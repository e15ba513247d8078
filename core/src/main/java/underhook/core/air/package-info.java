/**
 * The air a machine flies in: standard atmosphere, pressure and density altitude, wind on a track.
 *
 * <p>All of it holds in the troposphere, from 5000 m below to 11000 m above the standard zero. The
 * air is a perfect gas; humid air is dry air plus vapour. Sources: ICAO Doc 7488/3 for the standard
 * atmosphere, the vapour formula of the US National Weather Service.
 */
@NullMarked
package underhook.core.air;

import org.jspecify.annotations.NullMarked;
