/**
 * The order of a day as a puzzle in whole numbers: which trip when, with which line, fuel, crew and
 * break; how good an order can be at best; and what changing one costs.
 *
 * <p>{@code DayTable} holds what the puzzle is, and asks {@code LegTimes} for the times of ways when they are
 * first needed. {@code Decoder} turns a wished order into a day that keeps every rule that the table
 * knows. {@code Search} improves the wish by seeded local search of a counted number of days ({@code Effort}). {@code
 * FlightBound} and {@code FinishBound} say what no order goes below. Times are whole seconds, places,
 * trips, teams, lines and hours are numbers; nothing here knows terrain, wind or names.
 */
@NullMarked
package underhook.planner.search;

import org.jspecify.annotations.NullMarked;
