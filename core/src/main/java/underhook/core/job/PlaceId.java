package underhook.core.job;

/** Identity of a place. */
public record PlaceId(String value) implements Comparable<PlaceId> {
    public PlaceId {
        Ids.check(value);
    }

    @Override
    public int compareTo(PlaceId other) {
        return value.compareTo(other.value);
    }

    @Override
    public String toString() {
        return value;
    }
}
