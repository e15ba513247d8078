/**
 * Ways and heights, against lengths and altitudes worked by hand.
 *
 * <p>The ground is a plane, a step or a valley, so that every expected value can be followed on paper.
 */
@NullMarked
package underhook.planner.route;

import org.jspecify.annotations.NullMarked;
