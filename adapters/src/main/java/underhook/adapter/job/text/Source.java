package underhook.adapter.job.text;

import underhook.app.port.Fault;
import underhook.core.finding.FindingCode;

/**
 * A file being read.
 *
 * @param name as job.yaml names it
 * @param faults where its faults go
 */
public record Source(String name, Faults faults) {
    /** Notes a fault of this file. */
    public void fault(FindingCode code, At at, String what, Found found) {
        faults.add(
                new Fault(
                        code,
                        name,
                        at.line(),
                        at.field(),
                        what,
                        shorten(found.value()),
                        found.allowed()));
    }

    private static String shorten(String value) {
        String oneLine = value.strip().replaceAll("\\s+", " ");
        return oneLine.length() <= 80 ? oneLine : oneLine.substring(0, 77) + "...";
    }

    /** A line, from 1 (0 for the whole file), and a field, empty for the whole line. */
    public record At(int line, String field) {}

    /** What was found and what is allowed; either may be empty. */
    public record Found(String value, String allowed) {
        public static final Found NOTHING = new Found("", "");

        public static Found allowing(String allowed) {
            return new Found("", allowed);
        }
    }
}
