package underhook.core.site;

import java.util.Optional;

/**
 * The least steepness of a straight way in or out that keeps every margin over 60 m.
 *
 * @param leastRad angle over the horizontal, rad, in [0, π/2]; a right angle where only straight up and
 *     down does
 * @param part what decides; empty when a level way does
 * @param cause what it would come too near to; empty when a level way does
 */
public record Straight(double leastRad, Optional<Part> part, Optional<Cause> cause) {}
