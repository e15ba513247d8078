/**
 * What a calculation says when the answer is no, or yes with a remark.
 *
 * <p>A {@link underhook.core.finding.Finding} is about a load, a place, a leg or a field of a file. It
 * carries the value found, the limit, the unit and the source of the limit. An {@link
 * underhook.core.finding.Outcome} is a value with findings, or a refusal with findings.
 */
@NullMarked
package underhook.core.finding;

import org.jspecify.annotations.NullMarked;
