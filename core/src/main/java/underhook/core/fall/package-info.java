/**
 * Where a load lands that is let go.
 *
 * <p>A point mass under gravity and quadratic drag in a steady wind: no lift, no tumbling, no gliding of
 * sheets. Closed forms where they exist, otherwise {@link underhook.core.ode.DormandPrince} on the equations
 * of motion.
 */
@NullMarked
package underhook.core.fall;

import org.jspecify.annotations.NullMarked;
