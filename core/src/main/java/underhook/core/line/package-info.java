/**
 * The line between belly hook and load: leg tensions, unequal bridles, swing, the weakest link.
 *
 * <p>Statics of weightless straight legs; every item carries all that hangs below it. No shock, no swing
 * and no wear is in these forces: the limits they are held against must contain the safety factor. The
 * pendulum is a point mass under a fixed hook, without drag. Sources: plane statics, load-angle tables.
 */
@NullMarked
package underhook.core.line;

import org.jspecify.annotations.NullMarked;
