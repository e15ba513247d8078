/**
 * The command line. One class for each word; what a word does is a use case of {@code underhook.app}.
 *
 * <p>The result goes to the standard output and nothing else does; progress and complaints go to the
 * standard error. Exit codes: 0 done, 1 the program failed, 2 the input or the command line is refused,
 * 3 no plan is possible, 4 the verifier refused the plan.
 */
@NullMarked
package underhook.cli;

import org.jspecify.annotations.NullMarked;
