package underhook.core.site;

/** Whether there is room, from good to bad. */
public enum Fit {
    FREE,
    /** There is, by less than what is not known. */
    NEAR,
    REFUSED;

    /** The worse of two. */
    public Fit worse(Fit other) {
        return compareTo(other) >= 0 ? this : other;
    }
}
