/** Reads what closes a day: taps, the operator's books, samples of earlier days, a track as a table. */
@NullMarked
package underhook.adapter.job.evening;

import org.jspecify.annotations.NullMarked;
