package underhook.core.job;

/** What every id must look like. */
final class Ids {
    private Ids() {}

    static void check(String value) {
        if (value == null || value.isBlank() || !value.equals(value.strip())) {
            throw new IllegalArgumentException(
                    "id (" + value + ") must not be blank or padded with spaces.");
        }
    }
}
