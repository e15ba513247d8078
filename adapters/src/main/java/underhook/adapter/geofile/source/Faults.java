package underhook.adapter.geofile.source;

import java.util.ArrayList;
import java.util.List;
import underhook.app.port.Fault;
import underhook.core.finding.FindingCode;

/** Collects the faults of a file. Mutable. */
public final class Faults {
    /** A file of pure noise must not fill the memory with its faults. */
    private static final int MOST = 1000;

    private final String file;
    private final List<Fault> faults = new ArrayList<>();

    /**
     * Starts with none.
     *
     * @param file the file's name as stated
     */
    public Faults(String file) {
        this.file = file;
    }

    /**
     * Notes a fault.
     *
     * @param line line or row, from 1; 0 when it is about the whole file
     */
    public void add(int line, Unreadable fault) {
        if (faults.size() < MOST) {
            faults.add(fault.toFault(file, line));
        } else if (faults.size() == MOST) {
            faults.add(
                    Unreadable.of(
                                    FindingCode.TOO_LARGE,
                                    "there are more than "
                                            + MOST
                                            + " faults; the rest is not listed")
                            .allowing("mend these first")
                            .toFault(file, line));
        }
    }

    public boolean isEmpty() {
        return faults.isEmpty();
    }

    public List<Fault> list() {
        return List.copyOf(faults);
    }
}
