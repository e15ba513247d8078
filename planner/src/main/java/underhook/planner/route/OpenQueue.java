package underhook.planner.route;

import java.util.Arrays;

/** Numbers by rising cost; equal costs by rising number. Not safe for threads. */
final class OpenQueue {
    private double[] costS = new double[64];
    private int[] numbers = new int[64];
    private int size;

    boolean isEmpty() {
        return size == 0;
    }

    double leastS() {
        return costS[0];
    }

    void add(int number, double numberCostS) {
        if (size == numbers.length) {
            costS = Arrays.copyOf(costS, 2 * size);
            numbers = Arrays.copyOf(numbers, 2 * size);
        }
        int at = size++;
        while (at > 0) {
            int up = (at - 1) / 2;
            if (!isBefore(number, numberCostS, up)) {
                break;
            }
            move(up, at);
            at = up;
        }
        costS[at] = numberCostS;
        numbers[at] = number;
    }

    /** Takes the number of least cost out. */
    int poll() {
        int first = numbers[0];
        int number = numbers[--size];
        double numberCostS = costS[size];
        int at = 0;
        while (2 * at + 1 < size) {
            int down = 2 * at + 1;
            if (down + 1 < size && isBefore(numbers[down + 1], costS[down + 1], down)) {
                down++;
            }
            if (isBefore(number, numberCostS, down)) {
                break;
            }
            move(down, at);
            at = down;
        }
        costS[at] = numberCostS;
        numbers[at] = number;
        return first;
    }

    private boolean isBefore(int number, double numberCostS, int other) {
        int byCost = Double.compare(numberCostS, costS[other]);
        return byCost != 0 ? byCost < 0 : number < numbers[other];
    }

    private void move(int from, int to) {
        costS[to] = costS[from];
        numbers[to] = numbers[from];
    }
}
