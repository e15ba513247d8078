/**
 * Poles: what they weigh, where they balance, and how guys hold them up.
 *
 * <p>A pole is a solid cone's frustum of one density; what nobody weighed comes with its spread.
 *
 * <p>Guys only pull. Three or more hold a pole against a push from any side when every gap between
 * neighbours is under a half turn. The foot is a hinge. Sources: plane statics; limits on gaps are own
 * settings.
 */
@NullMarked
package underhook.core.pole;

import org.jspecify.annotations.NullMarked;
