package underhook.adapter.geofile.source;

import underhook.app.port.Fault;
import underhook.core.finding.FindingCode;

/** Something in a file that cannot be read as meant; the copies made from it say more. */
public final class Unreadable extends Exception {
    private static final long serialVersionUID = 1L;
    private static final int LONGEST_VALUE = 80;

    private final FindingCode code;
    private final String what;
    private final String field;
    private final String value;
    private final String allowed;

    private Unreadable(FindingCode code, String what, String[] details) {
        super(what);
        this.code = code;
        this.what = what;
        field = details[0];
        value = details[1];
        allowed = details[2];
    }

    /** What is wrong, in words, without value and remedy. */
    public static Unreadable of(FindingCode code, String what) {
        return new Unreadable(code, what, new String[] {"", "", ""});
    }

    /** The file is not of its kind, or damaged. */
    public static Unreadable file(String what) {
        return of(FindingCode.FILE_UNREADABLE, what);
    }

    /** A value or shape that cannot be read. */
    public static Unreadable field(String field, String what) {
        return of(FindingCode.FIELD_UNREADABLE, what).in(field);
    }

    /** A value that can be read but cannot be right. */
    public static Unreadable range(String field, String what) {
        return of(FindingCode.FIELD_OUT_OF_RANGE, what).in(field);
    }

    public Unreadable in(String inField) {
        return new Unreadable(code, what, new String[] {inField, value, allowed});
    }

    public Unreadable found(String text) {
        String shown =
                text.length() <= LONGEST_VALUE ? text : text.substring(0, LONGEST_VALUE) + "…";
        return new Unreadable(code, what, new String[] {field, shown, allowed});
    }

    public Unreadable allowing(String remedy) {
        return new Unreadable(code, what, new String[] {field, value, remedy});
    }

    public Fault toFault(String file, int line) {
        return new Fault(code, file, line, field, what, value, allowed);
    }
}
