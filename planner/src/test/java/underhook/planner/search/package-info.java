/** Tests of the order of a day. */
@NullMarked
package underhook.planner.search;

import org.jspecify.annotations.NullMarked;
