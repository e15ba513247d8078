/**
 * Daylight that people may work in.
 *
 * <p>From sunrise to sunset over a flat horizon, for a date of a zone; a valley has less. A date without
 * sun has no window. Sources: {@link underhook.core.geo.Sun}.
 */
@NullMarked
package underhook.core.crew;

import org.jspecify.annotations.NullMarked;
