package underhook.planner.order;

import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;

/** The end of the time that a plan may take, and whether anything was given up for it. */
final class Ceiling {
    private final BooleanSupplier stop;
    private final AtomicInteger cuts = new AtomicInteger();

    Ceiling(BooleanSupplier stop) {
        this.stop = stop;
    }

    /** Whether no more may be looked for; whoever asks must then give up what it wanted. */
    boolean isReached() {
        if (!stop.getAsBoolean()) {
            return false;
        }
        cuts.incrementAndGet();
        return true;
    }

    /** How often something was given up. */
    int cuts() {
        return cuts.get();
    }
}
