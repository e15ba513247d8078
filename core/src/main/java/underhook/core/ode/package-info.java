/**
 * Follows a system whose rates of change are known through time.
 *
 * <p>One adaptive Runge-Kutta method with a stated error for each step, used wherever an equation of
 * motion has no closed form: falling loads, swinging loads, lines in the wind. It knows no units; each
 * user says what stands in which place of the state.
 */
@NullMarked
package underhook.core.ode;

import org.jspecify.annotations.NullMarked;
