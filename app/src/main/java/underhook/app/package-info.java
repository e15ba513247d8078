/**
 * The use cases: what somebody asks of the program, from question to answer.
 *
 * <p>A use case knows the calculations and the ports of {@code app.port}; what stands behind a port is
 * handed in. Answers are values: each way in turns them into words, pages and exit codes.
 */
@NullMarked
package underhook.app;

import org.jspecify.annotations.NullMarked;
