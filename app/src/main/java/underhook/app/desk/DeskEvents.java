package underhook.app.desk;

import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;

/** Tells whoever listens what happens. Safe for threads. */
public final class DeskEvents {
    private final List<Consumer<DeskEvent>> listeners = new CopyOnWriteArrayList<>();

    /** Stops the telling. */
    public interface Listening extends AutoCloseable {
        @Override
        void close();
    }

    /** Hears everything from now on; the listener must return at once. */
    public Listening listen(Consumer<DeskEvent> listener) {
        listeners.add(listener);
        return () -> listeners.remove(listener);
    }

    void tell(DeskEvent event) {
        listeners.forEach(listener -> listener.accept(event));
    }
}
