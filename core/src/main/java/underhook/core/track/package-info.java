/**
 * What a recorded track says of the day: where the machine hovered, and which planned lifts that were.
 *
 * <p>A track knows no loads. Hook-ups and set-downs are guessed from hovering at known places, and matched
 * to the planned ones by their order and time; every time found so is an estimate, and what could not be
 * matched is told. Sources: own settings; alignment of sequences by Needleman and Wunsch.
 */
@NullMarked
package underhook.core.track;

import org.jspecify.annotations.NullMarked;
