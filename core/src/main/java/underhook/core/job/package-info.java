/**
 * A job as it was read: plain records of what the customer, the operator and the map say.
 *
 * <p>Everything is SI, angles in radians from true north, positions on WGS 84. Records here hold facts
 * and check their own ranges; they compute nothing, so that the search and the verifier can share them
 * without sharing a formula. A fact that a file may leave out is an {@code Optional} component: these
 * records mirror files, and in a file absence is itself a fact (house rule on optional fields broken
 * here, and only here and in {@code core.plan}, for that reason).
 */
@NullMarked
package underhook.core.job;

import org.jspecify.annotations.NullMarked;
