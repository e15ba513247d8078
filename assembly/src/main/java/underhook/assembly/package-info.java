/**
 * Puts the program together: picks the adapters, hands them to the use cases, hands those out.
 *
 * <p>The ways in (command line, pages) ask here for a ready use case and never see an adapter.
 */
@NullMarked
package underhook.assembly;

import org.jspecify.annotations.NullMarked;
