package underhook.core.wire;

import underhook.core.unit.Ranges;

/**
 * What flies, as a wire sees it: the machine about its hook, and line and load straight down from there.
 *
 * @param underHookM from the hook to the lowest end of line or load, m
 * @param loadRadiusM reach of the load to the side, m
 * @param reachM reach of rotor and tail to the side, m
 */
public record Flyer(double underHookM, double loadRadiusM, double reachM) {
    public Flyer {
        Ranges.requireNotNegative(underHookM, "underHookM");
        Ranges.requireNotNegative(loadRadiusM, "loadRadiusM");
        Ranges.requireNotNegative(reachM, "reachM");
    }
}
