/** Checks of the replayed day. */
@NullMarked
package underhook.planner.odds;

import org.jspecify.annotations.NullMarked;
