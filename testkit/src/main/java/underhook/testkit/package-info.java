/**
 * What tests of all modules share: reference cases from files, and seeded samples for laws.
 *
 * <p>Test scope only; depends on nothing of ours. A reference file holds one quantity with its source,
 * kind, inputs, expected value and tolerance, so that programs in any language can run it. Samples come
 * from a named seed, so that a failing law can be run again.
 */
@NullMarked
package underhook.testkit;

import org.jspecify.annotations.NullMarked;
