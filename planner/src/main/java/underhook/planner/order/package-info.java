/**
 * Puts a day's lifts in order: which load when, with which line, fuel, crew and break.
 *
 * <p>{@code DayModel} holds what one lift needs at each hour; {@code DayBuilder} builds a whole day from
 * a list of wishes, always keeping every rule; {@code DayPlanner} improves the wishes by a seeded local
 * search of fixed length and writes the best day down. The re-check lives elsewhere and shares none of
 * this.
 */
@NullMarked
package underhook.planner.order;

import org.jspecify.annotations.NullMarked;
