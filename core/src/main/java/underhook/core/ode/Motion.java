package underhook.core.ode;

/** How fast each place of a state changes. */
@FunctionalInterface
public interface Motion {
    /**
     * Writes the rates of change.
     *
     * <p>Bare arrays, against the rule for public signatures: this is called for every stage of every
     * step, and nothing may be made anew there.
     *
     * @param time seconds, or whatever the system runs along
     * @param state as it stands; not to be changed
     * @param rates to be filled, same places as the state, each in its unit over that of the time
     */
    void rates(double time, double[] state, double[] rates);
}
