/**
 * Wires: how they hang, everywhere that they can be, and how near something that flies comes to them.
 *
 * <p>A perfectly flexible wire of even weight, a catenary, also on steep spans whose lowest point lies
 * outside. What was stated of a wire is widened by heat and cold, and swung out by the wind; what nobody
 * stated is assumed on the safe side and said to be so. From the ground up to the highest it can be, all
 * counts as wire. Creep and ice, which only add sag, are not in it. Sources stand at the figures;
 * docs/calculations/sag.md tells the whole.
 */
@NullMarked
package underhook.core.wire;

import org.jspecify.annotations.NullMarked;
