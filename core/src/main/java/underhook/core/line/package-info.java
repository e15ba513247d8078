/**
 * The line between belly hook and load: leg tensions, bridles, swing, trail, the weakest link.
 *
 * <p>Statics of straight legs; every item carries all that hangs below it. No shock and no wear is in these
 * forces: the limits they are held against must contain the safety factor. A swinging load is a point on a
 * taut straight line whose mass and drag are lumped; a trailing line bends. The machine follows its path
 * whatever the load does. Sources: plane statics, load-angle tables, Lagrange's equations.
 */
@NullMarked
package underhook.core.line;

import org.jspecify.annotations.NullMarked;
