/**
 * Poles held up by guys.
 *
 * <p>Guys only pull. Three or more hold a pole against a push from any side when every gap between
 * neighbours is under a half turn. The foot is a hinge. Sources: plane statics; limits on gaps are own
 * settings.
 */
@NullMarked
package underhook.core.pole;

import org.jspecify.annotations.NullMarked;
