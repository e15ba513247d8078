/**
 * Obstacles from AIXM 5.1, 5.1.1 and 5.2 messages: masts, pylons, buildings, power lines, cableways.
 *
 * <p>What cannot be known is taken on the safe side: an obstacle stays until its register drops it, whatever
 * its construction status; a height that is not stated is a default of its type and marked as estimated.
 * Sources: AIXM 5.1.1 model and schema; EUROCONTROL's coding guidelines for obstacle data sets and their
 * sample data set "Donlon".
 */
@NullMarked
package underhook.adapter.geofile.aixm;

import org.jspecify.annotations.NullMarked;
