/**
 * Wires between two supports: sag, length, lowest point, tension.
 *
 * <p>A perfectly flexible wire of even weight, a catenary, also on steep spans whose lowest point lies
 * outside. Temperature, creep, ice and wind are not in it: the tension given must be that of the day.
 */
@NullMarked
package underhook.core.wire;

import org.jspecify.annotations.NullMarked;
