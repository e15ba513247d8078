package underhook.adapter.crs;

/** WKT text that cannot be read as a reference system that we know. */
final class WktFault extends Exception {
    private static final long serialVersionUID = 1L;

    private final String reason;

    WktFault(String reason) {
        super(reason);
        this.reason = reason;
    }

    /** What is wrong, as the end of a sentence. */
    String reason() {
        return reason;
    }
}
