/**
 * Re-checks a written plan against its job, step by step and rule by rule.
 *
 * <p>Starts from the plan's and the job's records and the height fields, and from nothing else: chart,
 * fuel, wind, sun, time and geometry are computed here a second time, so that one wrong formula cannot
 * pass both the search and the check. Each {@code …Check} looks at one subject, counts what it asked
 * and enters what does not hold in the {@link underhook.planner.verify.Ledger}. Where the plan may be
 * rounded, the tolerance is a named constant in {@link underhook.planner.verify.Tolerance}.
 */
@NullMarked
package underhook.planner.verify;

import org.jspecify.annotations.NullMarked;
