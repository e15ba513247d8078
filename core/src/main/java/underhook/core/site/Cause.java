package underhook.core.site;

/** What the room ends at. */
public enum Cause {
    GROUND,
    TREES,
    THING,
    WIRE;

    /** As written in files and on paper. */
    public String word() {
        return switch (this) {
            case GROUND -> "ground";
            case TREES -> "trees";
            case THING -> "thing";
            case WIRE -> "wire";
        };
    }
}
