package underhook.adapter.geofile.source;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;

/**
 * A stream of XML that ends in a {@link TooLarge} when it holds more than it may: in all, or without a
 * {@code <} in between, for a parser keeps a text or an attribute in memory as a whole.
 */
final class BoundedStream extends FilterInputStream {
    private static final int LONGEST_RUN = 16 << 20;

    private final long mostBytes;
    private long bytes;
    private int run;

    BoundedStream(InputStream in, long mostBytes) {
        super(in);
        this.mostBytes = mostBytes;
    }

    @Override
    public int read() throws IOException {
        int next = super.read();
        if (next >= 0) {
            count((byte) next);
            check();
        }
        return next;
    }

    @Override
    public int read(byte[] buffer, int offset, int length) throws IOException {
        int got = super.read(buffer, offset, length);
        for (int i = 0; i < got; i++) {
            count(buffer[offset + i]);
        }
        check();
        return got;
    }

    private void count(byte next) {
        bytes++;
        run = next == '<' ? 0 : run + 1;
    }

    private void check() throws TooLarge {
        if (bytes > mostBytes || run > LONGEST_RUN) {
            throw new TooLarge();
        }
    }

    /** The bound was passed. */
    static final class TooLarge extends IOException {
        private static final long serialVersionUID = 1L;
    }
}
