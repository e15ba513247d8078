/**
 * How a load rides in the air: steady trail angle, line tension, speed limit, ballast.
 *
 * <p>Balances drag against weight on a straight, weightless line; it says nothing on swinging, spinning
 * or flying loads, so a trail limit well below what looks possible is part of the rules. Sources: NASA
 * Glenn shape drag for coefficients, statics for the rest.
 */
@NullMarked
package underhook.core.load;

import org.jspecify.annotations.NullMarked;
