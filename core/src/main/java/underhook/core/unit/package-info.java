/**
 * Conversion between the units people write and SI. The only place with conversion factors.
 *
 * <p>Factors are exact by definition: the international foot, nautical mile and pound, the US gallon
 * and the conventional inch of mercury.
 */
@NullMarked
package underhook.core.unit;

import org.jspecify.annotations.NullMarked;
