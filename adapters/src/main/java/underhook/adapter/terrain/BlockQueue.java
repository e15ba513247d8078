package underhook.adapter.terrain;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;

/**
 * Blocks to be read by a few threads, each taking the next one.
 *
 * <p>They are taken in order and every one taken is finished, so the first fault is the same however the
 * threads run. Mutable.
 */
final class BlockQueue {
    /** Below this a thread costs more than it saves. */
    private static final int BLOCKS_PER_THREAD = 8;

    private final List<TiffBlocks.Block> blocks;
    private final Supplier<BlockReader> readers;
    private final AtomicInteger next = new AtomicInteger();
    private final AtomicInteger firstFault = new AtomicInteger(Integer.MAX_VALUE);

    BlockQueue(List<TiffBlocks.Block> blocks, Supplier<BlockReader> readers) {
        this.blocks = blocks;
        this.readers = readers;
    }

    /** Reads them all by this many threads at most, which each have room for a row. */
    void read(int mostThreads) throws IOException, RasterFault {
        int threads =
                Math.min(
                        Math.min(mostThreads, Runtime.getRuntime().availableProcessors()),
                        1 + blocks.size() / BLOCKS_PER_THREAD);
        List<FutureTask<End>> tasks = new ArrayList<>();
        for (int i = 0; i < threads; i++) {
            tasks.add(new FutureTask<>(this::work));
        }
        for (FutureTask<End> task : tasks.subList(1, threads)) {
            Thread thread = new Thread(task, "raster");
            thread.setDaemon(true);
            thread.start();
        }
        tasks.get(0).run();
        End worst = End.NONE;
        for (FutureTask<End> task : tasks) {
            End end = endOf(task);
            worst = end.index < worst.index ? end : worst;
        }
        worst.fault.raise();
    }

    private static End endOf(FutureTask<End> task) throws IOException {
        try {
            return task.get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("interrupted while a raster was read", e);
        } catch (ExecutionException e) {
            throw new IllegalStateException("a raster's reader failed", e.getCause());
        }
    }

    private End work() {
        try (BlockReader reader = readers.get()) {
            int index = next.getAndIncrement();
            while (index < blocks.size() && index < firstFault.get()) {
                try {
                    reader.read(blocks.get(index));
                } catch (IOException e) {
                    return end(
                            index,
                            () -> {
                                throw e;
                            });
                } catch (RasterFault e) {
                    return end(
                            index,
                            () -> {
                                throw e;
                            });
                }
                index = next.getAndIncrement();
            }
        }
        return End.NONE;
    }

    private End end(int index, Fault fault) {
        firstFault.accumulateAndGet(index, Math::min);
        return new End(index, fault);
    }

    /** What stopped a thread. */
    private interface Fault {
        void raise() throws IOException, RasterFault;
    }

    private record End(int index, Fault fault) {
        static final End NONE = new End(Integer.MAX_VALUE, () -> {});
    }
}
