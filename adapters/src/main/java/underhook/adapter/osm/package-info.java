/**
 * OpenStreetMap files as maps: PBF, and XML plain or packed with gzip or bzip2.
 *
 * <p>A file is read two or three times. First every node's side of the box is noted in tables of fixed
 * size, so that a way or an outline is let go only when all of it lies on one side of the box; then the
 * nodes of what is left are looked up and the box is tested exactly. What is kept grows with what lies in
 * the box. Tags are given our meaning by the tables in {@code Meaning} and {@code WireMeaning}; what has
 * no height gets a tall one of its kind, and that is said. The inner rings of an area are not looked at:
 * a hole counts as the thing around it.
 *
 * @source OSM-PBF file layout; OSM-WIKI meaning of tags; PRACTICE heights where none is stated
 */
@NullMarked
package underhook.adapter.osm;

import org.jspecify.annotations.NullMarked;
