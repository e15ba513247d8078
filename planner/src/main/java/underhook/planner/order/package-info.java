/**
 * Puts a day's lifts in order: which load when, with which line, fuel, crew and break.
 *
 * <p>{@code DayModel} holds what one lift needs at each hour (air in {@code DayAir}, directions
 * in {@code WaysIn}, legs in {@code DayLegs}); {@code TripMaker} hangs loads on
 * hooks; {@code DayTables} makes of both the table on which {@code planner.search} orders the day; {@code
 * DayStory} gives the ordered day its ways and words, and {@code PlanBuilder} writes it down. The re-check lives
 * elsewhere and shares none of this.
 */
@NullMarked
package underhook.planner.order;

import org.jspecify.annotations.NullMarked;
