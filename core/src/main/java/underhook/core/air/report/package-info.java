/**
 * Aviation weather reports as text: METAR, SPECI and TAF.
 *
 * <p>{@link underhook.core.air.report.WeatherReports} reads one report. A group that is missing, or
 * filled with slashes, stays absent: it never becomes zero. A group that nobody knows is listed and the
 * reading goes on behind it. The raw text is always kept.
 */
@NullMarked
package underhook.core.air.report;

import org.jspecify.annotations.NullMarked;
