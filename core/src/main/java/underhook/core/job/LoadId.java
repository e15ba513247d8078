package underhook.core.job;

/** Identity of a load. */
public record LoadId(String value) implements Comparable<LoadId> {
    public LoadId {
        Ids.check(value);
    }

    @Override
    public int compareTo(LoadId other) {
        return value.compareTo(other.value);
    }

    @Override
    public String toString() {
        return value;
    }
}
