package underhook.core.job;

/** Identity of a crew or of a single handler. */
public record CrewId(String value) implements Comparable<CrewId> {
    public CrewId {
        Ids.check(value);
    }

    @Override
    public int compareTo(CrewId other) {
        return value.compareTo(other.value);
    }

    @Override
    public String toString() {
        return value;
    }
}
