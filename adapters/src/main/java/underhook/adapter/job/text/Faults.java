package underhook.adapter.job.text;

import java.util.ArrayList;
import java.util.List;
import underhook.app.port.Fault;
import underhook.core.finding.FindingCode;

/** Collects the faults of a whole job. Mutable. */
public final class Faults {
    /** A file of pure noise must not fill the memory with its faults. */
    private static final int MOST = 5000;

    private final List<Fault> faults = new ArrayList<>();
    private int count;

    /** Notes a fault. */
    public void add(Fault fault) {
        count++;
        if (faults.size() < MOST) {
            faults.add(fault);
        } else if (faults.size() == MOST) {
            faults.add(
                    new Fault(
                            FindingCode.TOO_LARGE,
                            fault.file(),
                            fault.line(),
                            "",
                            "there are more than " + MOST + " faults; the rest is not listed",
                            "",
                            "mend these first"));
        }
    }

    public void addAll(List<Fault> more) {
        more.forEach(this::add);
    }

    /** Counts a fault that was reported before and is not said again. */
    void addAgain() {
        count++;
    }

    /** How many were noted so far; a record may be built when this did not grow while reading it. */
    public int count() {
        return count;
    }

    public boolean isEmpty() {
        return count == 0;
    }

    public List<Fault> list() {
        return List.copyOf(faults);
    }
}
