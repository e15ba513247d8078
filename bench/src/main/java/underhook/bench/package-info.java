/**
 * Speed measurements, each as a ratio against a named baseline measured in the same run.
 *
 * <p>A bare time says little about another machine; a ratio says a little more. Never shipped.
 */
@NullMarked
package underhook.bench;

import org.jspecify.annotations.NullMarked;
