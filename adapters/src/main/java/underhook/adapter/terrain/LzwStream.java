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
    private final short[] length = new short[4096];
    private final byte[] stack = new byte[4097];
    private int stacked;
    private final byte[] packed = new byte[1 << 15];
    private int packedAt;
    private int packedEnd;
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
    public int read(byte[] out, int offset, int count) throws IOException {
        int done = 0;
        while (done < count) {
            if (stacked > 0) {
                out[offset + done++] = stack[--stacked];
            } else {
                int code = nextCode();
                if (code == END) {
                    return done == 0 ? -1 : done;
                }
                int size = sizeOf(code);
                if (size <= count - done) {
                    spell(code, out, offset + done + size - 1);
                    done += size;
                } else {
                    spell(code, stack, size - 1);
                    turnStack(size);
                }
                learn(code);
            }
        }
        return done;
    }

    /** Puts the bytes of the next code on the stack, last one lowest. */
    private boolean unpack() throws IOException {
        int code = nextCode();
        if (code == END) {
            return false;
        }
        int size = sizeOf(code);
        spell(code, stack, size - 1);
        turnStack(size);
        learn(code);
        return true;
    }

    private int nextCode() throws IOException {
        int code = ended ? END : code();
        while (code == CLEAR) {
            next = END + 1;
            width = 9;
            previous = -1;
            code = code();
        }
        ended = code == END;
        if (ended) {
            return END;
        }
        if (previous < 0) {
            if (code > 255) {
                throw new EOFException("LZW code " + code + " cannot come first");
            }
        } else if (code > next || (next > 4095 && code >= next)) {
            throw new EOFException("LZW code " + code + " is not yet known");
        }
        return code;
    }

    private int sizeOf(int code) {
        if (code < CLEAR) {
            return 1;
        }
        return code == next && previous >= 0 ? sizeOf(previous) + 1 : length[code];
    }

    /** Writes the bytes of a code from its last one, at an index, backwards. */
    private void spell(int code, byte[] out, int last) {
        int at = last;
        int walk = code;
        if (code == next && previous >= 0) {
            out[at--] = first;
            walk = previous;
        }
        while (walk > END) {
            out[at--] = suffix[walk];
            walk = prefix[walk];
        }
        first = (byte) walk;
        out[at] = first;
    }

    private void turnStack(int size) {
        for (int i = 0; i < size / 2; i++) {
            byte swapped = stack[i];
            stack[i] = stack[size - 1 - i];
            stack[size - 1 - i] = swapped;
        }
        stacked = size;
    }

    private void learn(int code) {
        if (previous >= 0 && next < 4096) {
            prefix[next] = (short) previous;
            suffix[next] = first;
            length[next] = (short) (sizeOf(previous) + 1);
            next++;
            if (next + 1 >= (1 << width) && width < 12) {
                width++;
            }
        }
        previous = code;
    }

    private int code() throws IOException {
        while (bitCount < width) {
            if (packedAt == packedEnd) {
                packedEnd = in.read(packed, 0, packed.length);
                packedAt = 0;
                if (packedEnd <= 0) {
                    packedEnd = 0;
                    return END;
                }
            }
            bits = (bits << 8) | (packed[packedAt++] & 0xff);
            bitCount += 8;
        }
        bitCount -= width;
        int code = (bits >>> bitCount) & ((1 << width) - 1);
        bits &= (1 << bitCount) - 1;
        return code;
    }
}
