package underhook.cli;

import java.io.PrintWriter;
import java.lang.invoke.MethodHandle;
import java.lang.invoke.MethodHandleProxies;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.MethodType;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import underhook.app.Progress;

/**
 * Work that shows its progress and that Ctrl-C, or a request to terminate, ends: the first time with the best so far,
 * the second time at once. Before there is anything the first time ends at once too, as it would without this.
 *
 * <p>A shutdown hook would not do: while it waits for the work the JVM hears no second signal, and the exit code is no
 * longer the work's. {@code sun.misc.Signal} is what Java has, on every system; it is looked up by name because the
 * compiler warns of it with no way to say that it is meant. Where it is missing, or taken by {@code -Xrs}, signals end
 * the program as ever.
 */
final class LongWork implements Progress, AutoCloseable {
    /** Of 128 and the number of the signal, as shells have it. */
    private static final List<String> SIGNALS = List.of("INT", "TERM");

    /** When somebody stopped it. */
    enum Stop {
        NONE,
        /** What the work was still looking for may be missing. */
        IN_THE_WORK,
        /** While the rest was being checked and written: nothing is missing for it. */
        AFTER_THE_WORK
    }

    private final ProgressLines lines;
    private final List<Heard> heard = new ArrayList<>();
    private boolean hasDay;
    private volatile boolean isStopped;
    private volatile boolean isCut;

    /** A signal that is listened to, and what it did before. */
    private record Heard(Object signal, Object before) {}

    private LongWork(ProgressLines lines) {
        this.lines = lines;
    }

    /** Listens until it is closed. */
    static LongWork begin(PrintWriter err) {
        LongWork work = new LongWork(ProgressLines.on(err));
        work.listen();
        return work;
    }

    /** Whether the work must end with what it has; asked by the work itself. */
    boolean mustEnd() {
        if (isStopped) {
            isCut = true;
        }
        return isStopped;
    }

    /** Whether somebody stopped it, and whether the work was still asking then. */
    Stop stop() {
        return !isStopped ? Stop.NONE : isCut ? Stop.IN_THE_WORK : Stop.AFTER_THE_WORK;
    }

    @Override
    public void at(String doing, double doneFraction) {
        lines.at(doing, doneFraction);
    }

    @Override
    public synchronized void hasDay() {
        hasDay = true;
    }

    private synchronized void listen() {
        for (String name : SIGNALS) {
            try {
                Object signal = Signals.named(name);
                Object before = Signals.handle(signal, Signals.calling(this::hear));
                heard.add(new Heard(signal, before));
            } catch (ReflectiveOperationException | IllegalArgumentException notHere) {
                // It ends the program then, which leaves nothing half-written either.
            }
        }
    }

    private synchronized void hear(Object signal) {
        stopListening();
        isStopped = true;
        if (hasDay) {
            lines.say("Stopping: the best so far is being finished. Once more ends it at once.");
            return;
        }
        lines.close();
        lines.say("Stopped before there was a day; nothing was written.");
        try {
            Signals.raise(signal);
        } catch (ReflectiveOperationException cannot) {
            throw new IllegalStateException(cannot);
        }
    }

    private void stopListening() {
        for (Heard one : heard) {
            try {
                Signals.handle(one.signal(), one.before());
            } catch (ReflectiveOperationException cannot) {
                throw new IllegalStateException(cannot);
            }
        }
        heard.clear();
    }

    @Override
    public synchronized void close() {
        stopListening();
        lines.close();
    }

    /** {@code sun.misc.Signal} by name. */
    private static final class Signals {
        static Object named(String name) throws ReflectiveOperationException {
            return signal().getConstructor(String.class).newInstance(name);
        }

        /** Sets what a signal does; returns what it did before. */
        static Object handle(Object signal, Object handler) throws ReflectiveOperationException {
            return signal().getMethod("handle", signal(), handler()).invoke(null, signal, handler);
        }

        static void raise(Object signal) throws ReflectiveOperationException {
            signal().getMethod("raise", signal()).invoke(null, signal);
        }

        static Object calling(Consumer<Object> hearing) throws ReflectiveOperationException {
            MethodHandle accept =
                    MethodHandles.publicLookup()
                            .findVirtual(
                                    Consumer.class,
                                    "accept",
                                    MethodType.methodType(void.class, Object.class));
            return MethodHandleProxies.asInterfaceInstance(handler(), accept.bindTo(hearing));
        }

        private static Class<?> signal() throws ClassNotFoundException {
            return Class.forName("sun.misc.Signal");
        }

        private static Class<?> handler() throws ClassNotFoundException {
            return Class.forName("sun.misc.SignalHandler");
        }
    }
}
