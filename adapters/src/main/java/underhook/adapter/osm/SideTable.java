package underhook.adapter.osm;

import java.util.Arrays;

/**
 * For each id, sides of the box on which a thing surely lies. Mutable.
 *
 * <p>Its size is fixed, whatever the file holds: ids share slots, and a slot holds only the sides that all
 * of its ids have in common. A shared slot may thus say less than is true, never more: a thing may be
 * looked at in vain but is never lost. Neighbouring ids were mostly mapped together and lie near each
 * other, so they share one slot.
 */
final class SideTable {
    private static final int LEAST_BITS = 16;
    private static final int MOST_BITS = 25;
    private static final int NEIGHBOUR_BITS = 2;

    /** Multiplier that spreads numbers over the table: 2^64 over the golden ratio. */
    private static final long SPREAD = 0x9E3779B97F4A7C15L;

    private final byte[] sides;
    private final int shift;

    SideTable(long fileBytes) {
        int bits = 64 - Long.numberOfLeadingZeros(fileBytes / 8);
        bits = Math.min(MOST_BITS, Math.max(LEAST_BITS, bits));
        sides = new byte[1 << bits];
        Arrays.fill(sides, (byte) Reach.EVERY_SIDE);
        shift = 64 - bits;
    }

    void add(long id, int lies) {
        sides[slot(id)] &= (byte) lies;
    }

    /** Sides of a thing that was added; every side for one that was not, when its slot is its own. */
    int get(long id) {
        return sides[slot(id)];
    }

    private int slot(long id) {
        return (int) (((id >> NEIGHBOUR_BITS) * SPREAD) >>> shift);
    }
}
