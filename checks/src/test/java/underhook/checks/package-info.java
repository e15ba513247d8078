/**
 * Checks of the whole project that a machine can make: who may import whom, how numbers are named,
 * whether sources and documents hold together.
 *
 * <p>Each rule is a function from material to complaints, so that a test can show it a bad sample and
 * see it complain.
 */
@NullMarked
package underhook.checks;

import org.jspecify.annotations.NullMarked;
