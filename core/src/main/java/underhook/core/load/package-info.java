/**
 * How a load rides in the air: steady trail angle, line tension, speed limit, ballast, remedies, densities.
 *
 * <p>Balances drag against weight; with the line's drag where it is known. It says nothing on spinning or
 * flying loads, so a trail limit well below what looks possible is part of the rules. Sources: NASA Glenn
 * shape drag and printed tables for coefficients, statics for the rest.
 */
@NullMarked
package underhook.core.load;

import org.jspecify.annotations.NullMarked;
