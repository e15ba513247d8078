/**
 * A planned day as one plain page on this machine, with links to the files that were written.
 *
 * <p>The page shows what the plan says and computes nothing but roundings. It needs no script and asks
 * no other host for anything. The server listens on the loopback address only.
 */
@NullMarked
package underhook.web;

import org.jspecify.annotations.NullMarked;
