/**
 * Writes the demo day: an invented job that is read by the same code as any other.
 *
 * <p>Tables and rules are kept as the very files they become; ground and forest are made from formulas
 * and a fixed seed, so that the same bytes come out every time and everywhere. Only inputs stand here,
 * no answers. Several faults are in it on purpose: a guy plan with a gap, a missing mass, loads that are
 * too heavy or fly badly, landing places that are too steep, a wire that nobody registered.
 */
@NullMarked
package underhook.adapter.demo;

import org.jspecify.annotations.NullMarked;
