/** Closes a day: taps and track beside the plan, and what comes of them. */
@NullMarked
package underhook.app.evening;

import org.jspecify.annotations.NullMarked;
