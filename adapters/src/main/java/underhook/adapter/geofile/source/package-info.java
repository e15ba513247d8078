/**
 * How files of geodata are opened, and what is said when they cannot be read as meant.
 *
 * <p>XML is streamed by the JDK's own parser without document types, entities and addresses; depth, text
 * and size are bounded, so that a hostile file costs no more than a large one.
 */
@NullMarked
package underhook.adapter.geofile.source;

import org.jspecify.annotations.NullMarked;
