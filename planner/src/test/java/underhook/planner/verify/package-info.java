/**
 * Tests of the verifier on a small invented day worked by hand.
 *
 * <p>A correct plan must hold; each seeded break must be refused with its code and subject.
 */
@NullMarked
package underhook.planner.verify;

import org.jspecify.annotations.NullMarked;
