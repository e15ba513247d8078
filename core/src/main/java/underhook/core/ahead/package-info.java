/**
 * What can be said of a job beside its plan: notices near it, whether the heaviest piece can be lifted in
 * that month, how often the weather of that month lets the day be flown.
 *
 * <p>{@link underhook.core.ahead.Ahead} gives all of it as {@link underhook.core.ahead.Answer}s: sentences
 * with figures, each with a mark. Nothing of it changes a plan, and nothing of it clears anybody to fly.
 */
@NullMarked
package underhook.core.ahead;

import org.jspecify.annotations.NullMarked;
