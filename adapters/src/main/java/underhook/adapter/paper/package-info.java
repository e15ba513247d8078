/**
 * The day on paper: pilot cards, loader's lists, crew sheets, map, findings and signals in one PDF.
 *
 * <p>Everything is drawn for black and white print, with one embedded font, so that the pages look the
 * same on every machine. Text that matters is at least 11 points, flown digits at least 14 and bold.
 * Numbers that are flown are rounded to the safe side. The same plan gives the same bytes.
 *
 * <p>Nothing is computed here that decides a lift; only directions and distances between places, the
 * minute at which a leg passes a crossing, and the gaps between planned guys are worked out for display.
 */
@NullMarked
package underhook.adapter.paper;

import org.jspecify.annotations.NullMarked;
