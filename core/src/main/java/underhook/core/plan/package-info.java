/**
 * A written plan: plain records of what shall be done when, as they stand in plan.json.
 *
 * <p>Only what was decided stands here, with the limits as computed. Whoever re-checks a plan starts
 * from these records and the job, and from nothing else.
 */
@NullMarked
package underhook.core.plan;

import org.jspecify.annotations.NullMarked;
