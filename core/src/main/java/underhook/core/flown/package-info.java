/**
 * What was really done: taps of the people on the day, and the day they add up to.
 *
 * <p>A tap is never lost: one that the day does not allow is kept and told as a conflict. Taps are read in
 * the order of their times, ties by their ids, so every device comes to the same day whatever came first.
 * Cycles are counted by a rule that the maintenance manual of the type names. Sources: the counting rules.
 */
@NullMarked
package underhook.core.flown;

import org.jspecify.annotations.NullMarked;
