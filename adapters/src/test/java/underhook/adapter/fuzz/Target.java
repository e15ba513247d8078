package underhook.adapter.fuzz;

import java.io.IOException;
import java.util.List;
import underhook.app.port.Fault;

/** A reader of bytes that somebody else wrote. */
public interface Target {
    /** Files that are right, to begin with. */
    List<byte[]> seeds() throws IOException;

    /**
     * Reads and judges what comes back: a value or faults, never an exception for what the bytes hold.
     *
     * @return whether the bytes were accepted
     */
    boolean read(byte[] bytes) throws IOException;

    /** Every fault must be tellable. */
    static void tell(List<Fault> faults) {
        for (Fault fault : faults) {
            if (fault.what().isBlank() || fault.toString().length() > 5000) {
                throw new AssertionError("a fault that tells nothing: " + fault);
            }
        }
    }
}
