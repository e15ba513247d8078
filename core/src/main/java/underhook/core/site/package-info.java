/**
 * Is there room at a place for rotor, tail, fuselage, line and load, on which heading, with which line?
 *
 * <p>What stands around a place is taken as solid columns: cells of ground with their trees, pieces of
 * things and wires. Each part of the machine and what hangs under it is a bar lying level or a disc; its
 * margin is the distance in space to the nearest column. See docs/calculations/room.md.
 */
@NullMarked
package underhook.core.site;

import org.jspecify.annotations.NullMarked;
