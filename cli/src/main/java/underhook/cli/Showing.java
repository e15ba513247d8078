package underhook.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.net.URI;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Supplier;
import javax.net.ssl.SSLContext;
import underhook.app.FolderLock;
import underhook.app.desk.Desk;
import underhook.app.desk.PlanRuns;
import underhook.web.DeskServer;

/** Opens the desk until the program is stopped. */
final class Showing {
    static final String DEFAULT_PORT = "8465";

    /** Lets whoever knows it in from the network; never a word of the command line, which others see. */
    static final String SECRET_VARIABLE = "UNDERHOOK_SECRET";

    private static final String LOCK = ".underhook-desk.lock";

    private final Kit kit;

    /** What a desk is put together from. */
    record Kit(Supplier<Desk> desk, Supplier<PlanRuns> runs, String program, Path dataFolder) {}

    /** Puts jobs on the desk before it is opened. */
    interface Laying {
        void lay(Desk desk, PlanRuns runs) throws IOException;
    }

    /**
     * Where it is shown.
     *
     * @param secret opens it to the network; empty keeps it on this machine
     * @param tls what it proves itself with over https; empty for plain http
     */
    record Where(int port, Optional<String> secret, Optional<SSLContext> tls) {}

    Showing(Kit kit) {
        this.kit = kit;
    }

    /**
     * Shows until stopped.
     *
     * @throws underhook.app.FolderBusyException when another process has the data folder
     */
    void untilStopped(Where where, Laying laying, PrintWriter out) throws IOException {
        FolderLock held = FolderLock.hold(kit.dataFolder(), LOCK);
        Logs.keepIn(kit.dataFolder());
        try (Desk desk = kit.desk().get();
                PlanRuns runs = kit.runs().get()) {
            laying.lay(desk, runs);
            serve(new DeskServer.Desktop(desk, runs, kit.program()), where, out);
        } finally {
            held.close();
        }
    }

    private static void serve(DeskServer.Desktop desktop, Where where, PrintWriter out)
            throws IOException {
        DeskServer.Where at = new DeskServer.Where(where.port(), where.secret(), where.tls());
        try (DeskServer server = DeskServer.start(desktop, at)) {
            out.println("Showing at " + server.address() + " until you press Ctrl-C.");
            for (URI address : server.networkAddresses()) {
                out.println(
                        "On the network at " + address + ", the day at " + address + "day/JOB.");
            }
            server.warmUp();
            Thread.currentThread().join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
