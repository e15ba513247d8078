package underhook.web;

import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;

/**
 * Large answers, worked out once: whoever asks for one that is being worked out waits for it. Safe for threads.
 */
final class Answers {
    private static final int KEPT = 8;

    private final Map<String, CompletableFuture<Asset>> kept = new LinkedHashMap<>();

    /** Works it out. */
    interface Work {
        Asset make() throws IOException;
    }

    /**
     * The answer of that name.
     *
     * @param name another one whenever the answer may be another
     * @throws IOException when it cannot be worked out; then the next one who asks tries again
     */
    Asset get(String name, Work work) throws IOException {
        CompletableFuture<Asset> mine = new CompletableFuture<>();
        CompletableFuture<Asset> first = claim(name, mine);
        if (first == mine) {
            make(name, mine, work);
        }
        try {
            return first.join();
        } catch (CompletionException failed) {
            if (failed.getCause() instanceof IOException why) {
                throw why;
            }
            throw failed;
        }
    }

    private void make(String name, CompletableFuture<Asset> answer, Work work) throws IOException {
        try {
            answer.complete(work.make());
        } catch (IOException | RuntimeException failed) {
            drop(name);
            answer.completeExceptionally(
                    failed instanceof IOException why ? why : new IOException(failed));
            throw failed;
        }
    }

    private synchronized CompletableFuture<Asset> claim(
            String name, CompletableFuture<Asset> mine) {
        CompletableFuture<Asset> other = kept.putIfAbsent(name, mine);
        if (kept.size() > KEPT) {
            kept.remove(kept.keySet().iterator().next());
        }
        return other == null ? mine : other;
    }

    private synchronized void drop(String name) {
        kept.remove(name);
    }
}
