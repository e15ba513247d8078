package underhook.adapter.terrain;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;

/**
 * Unpacks the LZW of TIFF: codes of 9 to 12 bits, highest bit first, widened one code early.
 *
 * @source TIFF-6 section 13
 */
final class LzwStream extends InputStream {
    private static final int CLEAR = 256;
    private static final int END = 257;

    private final InputStream in;
    private final short[] prefix = new short[4096];
    private final byte[] suffix = new byte[4096];
    private final byte[] stack = new byte[4097];
    private int stacked;
    private int next = END + 1;
    private int width = 9;
    private int previous = -1;
    private byte first;
    private int bits;
    private int bitCount;
    private boolean ended;

    LzwStream(InputStream in) {
        this.in = in;
    }

    @Override
    public int read() throws IOException {
        if (stacked == 0 && !unpack()) {
            return -1;
        }
        return stack[--stacked] & 0xff;
    }

    @Override
    public int read(byte[] out, int offset, int length) throws IOException {
        int done = 0;
        while (done < length) {
            if (stacked == 0 && !unpack()) {
                return done == 0 ? -1 : done;
            }
            while (stacked > 0 && done < length) {
                out[offset + done++] = stack[--stacked];
            }
        }
        return done;
    }

    /** Puts the bytes of the next code on the stack, last one lowest. */
    private boolean unpack() throws IOException {
        int code = ended ? END : code();
        while (code == CLEAR) {
            next = END + 1;
            width = 9;
            previous = -1;
            code = code();
        }
        if (code == END) {
            ended = true;
            return false;
        }
        int walk = code;
        if (previous < 0) {
            if (code > 255) {
                throw new EOFException("LZW code " + code + " cannot come first");
            }
        } else if (code > next || (next > 4095 && code >= next)) {
            throw new EOFException("LZW code " + code + " is not yet known");
        } else if (code == next) {
            stack[stacked++] = first;
            walk = previous;
        }
        while (walk > END) {
            stack[stacked++] = suffix[walk];
            walk = prefix[walk];
        }
        first = (byte) walk;
        stack[stacked++] = first;
        if (previous >= 0 && next < 4096) {
            prefix[next] = (short) previous;
            suffix[next] = first;
            next++;
            if (next + 1 >= (1 << width) && width < 12) {
                width++;
            }
        }
        previous = code;
        return true;
    }

    private int code() throws IOException {
        while (bitCount < width) {
            int b = in.read();
            if (b < 0) {
                return END;
            }
            bits = (bits << 8) | b;
            bitCount += 8;
        }
        bitCount -= width;
        int code = (bits >>> bitCount) & ((1 << width) - 1);
        bits &= (1 << bitCount) - 1;
        return code;
    }
}
