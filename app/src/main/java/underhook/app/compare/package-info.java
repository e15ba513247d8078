/** Whole days of one job side by side: other laydowns, one line alone, other machines. */
@NullMarked
package underhook.app.compare;

import org.jspecify.annotations.NullMarked;
