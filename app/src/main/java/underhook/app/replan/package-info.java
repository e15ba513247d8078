/**
 * The plan bends when the day does: what is done stays, the rest is ordered anew, near what people know.
 */
@NullMarked
package underhook.app.replan;

import org.jspecify.annotations.NullMarked;
