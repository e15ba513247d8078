/**
 * What the machine can lift and how it balances.
 *
 * <p>{@link underhook.core.aircraft.HoverChart} looks masses up in the flight-manual table and never
 * leaves it; no wind is credited. {@link underhook.core.aircraft.MomentumHover} is theory for the
 * downwash, an estimate only and never a limit. {@link underhook.core.aircraft.CentreOfGravity} adds up
 * moments and holds them against the manual's envelope along the whole fuel burn. Sources: the machine's
 * own manual as entered in the job; momentum theory (LEISHMAN-2006).
 */
@NullMarked
package underhook.core.aircraft;

import org.jspecify.annotations.NullMarked;
