package underhook.adapter.osm;

import java.util.Arrays;

/** A list of numbers that grows. Mutable. */
final class LongList {
    private long[] numbers = new long[16];
    private int size;

    void add(long number) {
        if (size == numbers.length) {
            numbers = Arrays.copyOf(numbers, 2 * size);
        }
        numbers[size++] = number;
    }

    void addAll(long[] more) {
        for (long number : more) {
            add(number);
        }
    }

    long last() {
        return numbers[size - 1];
    }

    int size() {
        return size;
    }

    long[] toArray() {
        return Arrays.copyOf(numbers, size);
    }

    /** Each number once, in rising order. */
    long[] toSorted() {
        long[] sorted = toArray();
        Arrays.sort(sorted);
        int kept = 0;
        for (int i = 0; i < sorted.length; i++) {
            if (i == 0 || sorted[i] != sorted[i - 1]) {
                sorted[kept++] = sorted[i];
            }
        }
        return Arrays.copyOf(sorted, kept);
    }
}
