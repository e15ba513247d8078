package underhook.adapter.osm;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;

/**
 * Counts what a parser reads, in all and since the last thing it understood, so that neither a bomb nor
 * an endless tag fills the memory. Mutable.
 */
final class PacedStream extends FilterInputStream {
    /** A tag has at most 255 letters, and a parser reads some kilobytes ahead. */
    private static final long LONGEST_THING_BYTES = 1 << 20;

    private final TotalLimit total;
    private long sinceThing;

    PacedStream(InputStream in, TotalLimit total) {
        super(in);
        this.total = total;
    }

    /** The parser has come to the next thing. */
    void paced() {
        sinceThing = 0;
    }

    @Override
    public int read() throws IOException {
        int read = super.read();
        count(read < 0 ? 0 : 1);
        return read;
    }

    @Override
    public int read(byte[] bytes, int offset, int length) throws IOException {
        int read = super.read(bytes, offset, length);
        count(Math.max(0, read));
        return read;
    }

    private void count(int read) throws OsmFault {
        total.add(read);
        sinceThing += read;
        if (sinceThing > LONGEST_THING_BYTES) {
            throw OsmFault.tooLarge("has a single tag or text of more than 1 MiB", "");
        }
    }
}
