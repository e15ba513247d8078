/**
 * What was flown against what was planned, shrunk towards what was believed before.
 *
 * <p>Few flights say little: a group's own mean counts by its credibility, the rest is the mean of all
 * groups, and that in turn is held towards the plan's own figure. Every estimate says on how many samples
 * it stands. Source: Bühlmann and Straub's credibility.
 */
@NullMarked
package underhook.core.learn;

import org.jspecify.annotations.NullMarked;
