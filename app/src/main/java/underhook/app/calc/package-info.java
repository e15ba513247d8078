/**
 * One formula by hand: takes what a person types, checks it, and answers in the units a person reads.
 *
 * <p>Degrees, knots, feet and hectopascals live here only; each is turned into SI once, and the work is
 * done by {@code core}. Every flag has a stated range; all faults of one call are told together. Each
 * answer says under {@code how} which formula gave it and where that is from.
 */
@NullMarked
package underhook.app.calc;

import org.jspecify.annotations.NullMarked;
