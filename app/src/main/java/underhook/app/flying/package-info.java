/**
 * The day while it is flown: the log of taps, what it adds up to beside the plan, and what each person on
 * the day must see of it.
 *
 * <p>A tap is refused when the day does not allow it, and kept all the same when somebody says that it
 * happened. Numbers that somebody flies by are worked out here, never on a page.
 */
@NullMarked
package underhook.app.flying;

import org.jspecify.annotations.NullMarked;
