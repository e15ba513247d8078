/**
 * The planning desk and the flying day in a browser: one server, one page for the desk, one for devices.
 *
 * <p>Pages show what the server worked out and ask no other host for anything. Without a secret the server
 * listens on the loopback address only.
 */
@NullMarked
package underhook.web;

import org.jspecify.annotations.NullMarked;
