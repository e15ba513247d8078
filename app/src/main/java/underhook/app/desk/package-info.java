/**
 * The planning desk: jobs that are kept, changed in small steps, planned in the background and looked at.
 *
 * <p>A job is its files. Every accepted change is a revision on the disk before anybody is told that it
 * was accepted; plans are kept with the revision they were made from.
 */
@NullMarked
package underhook.app.desk;

import org.jspecify.annotations.NullMarked;
