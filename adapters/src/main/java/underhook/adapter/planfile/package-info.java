/**
 * plan.json: the plan as other programs read it, and the way back.
 *
 * <p>Units there are those of the trade: knots, degrees, minutes, kilograms, metres; times are ISO 8601
 * with the job's offset. What somebody flies by is rounded to the safe side when written. The reader is
 * strict: what it does not know it refuses, and it lists every fault at once. See docs/formats.md.
 */
@NullMarked
package underhook.adapter.planfile;

import org.jspecify.annotations.NullMarked;
