/**
 * How safe the finish is: a finished plan's day replayed some thousands of times with times that vary.
 *
 * <p>The day becomes a net of moments, each not before what it waits for: the step ahead, the crew, what
 * must come first, whoever hooks, the wind. Drawn times make one day of it; with every time as planned it
 * gives the plan's own times. The order stays as planned; nothing is planned anew when a lift is lost, and its
 * time is not given back. Only plan and job are read; ways, masses and room are taken as the plan has
 * them.
 */
@NullMarked
package underhook.planner.odds;

import org.jspecify.annotations.NullMarked;
