package underhook.adapter.osm;

/** Bounds what a packed file may unpack to in all, so that a small one cannot run for hours. Mutable. */
final class TotalLimit {
    private static final long ALWAYS_BYTES = 1L << 30;
    private static final long RATIO = 200;

    private final long mostBytes;
    private long bytes;

    private TotalLimit(long mostBytes) {
        this.mostBytes = mostBytes;
    }

    /** Maps pack to a tenth or a twentieth; two hundred to one is no map. */
    static TotalLimit of(long fileBytes) {
        return new TotalLimit(Math.max(ALWAYS_BYTES, RATIO * fileBytes));
    }

    void add(long more) throws OsmFault {
        bytes += more;
        if (bytes > mostBytes) {
            throw OsmFault.tooLarge(
                    "unpacks to far more than a map would",
                    "at most " + RATIO + " times its size, or 1 GiB");
        }
    }
}
