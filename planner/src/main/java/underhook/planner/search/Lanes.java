package underhook.planner.search;

import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.function.BiConsumer;
import java.util.stream.IntStream;

/**
 * Searches side by side, on as many processors as there are lanes.
 *
 * <p>Each lane has a table of its own, so what it guesses hangs on its own tasks alone, and which task goes to which
 * lane on its number alone: the same tasks come out the same on any machine.
 */
final class Lanes {
    private static final int COUNT = 2;

    private final List<Decoder> decoders;

    private Lanes(List<Decoder> decoders) {
        this.decoders = decoders;
    }

    static Lanes of(DayTable table) {
        return new Lanes(
                IntStream.range(0, COUNT)
                        .mapToObj(lane -> new Decoder(lane == 0 ? table : table.fork()))
                        .toList());
    }

    /** One lane, within one of others. */
    static Lanes of(Decoder decoder) {
        return new Lanes(List.of(decoder));
    }

    /** The first lane's. */
    Decoder first() {
        return decoders.get(0);
    }

    /** Does tasks by number, each lane its own in turn, the first lane's on the thread that asks. */
    void each(int from, int until, BiConsumer<Integer, Decoder> task) {
        List<CompletableFuture<Void>> others =
                IntStream.range(1, decoders.size())
                        .mapToObj(
                                lane ->
                                        CompletableFuture.runAsync(
                                                () -> go(lane, from, until, task)))
                        .toList();
        try {
            go(0, from, until, task);
        } finally {
            others.forEach(CompletableFuture::join);
        }
        share();
    }

    /** How many of the tasks until there the lane of one of them has from that one on, itself counted. */
    int turnsFrom(int task, int until) {
        return (until - task + decoders.size() - 1) / decoders.size();
    }

    /** What one lane was told of ways, all know when the next tasks begin. */
    private void share() {
        DayTable table = first().run().table;
        decoders.stream().skip(1).forEach(lane -> table.learn(lane.run().table));
        decoders.stream().skip(1).forEach(lane -> lane.run().table.learn(table));
    }

    private void go(int lane, int from, int until, BiConsumer<Integer, Decoder> task) {
        for (int i = from + lane; i < until; i += decoders.size()) {
            task.accept(i, decoders.get(lane));
        }
    }
}
