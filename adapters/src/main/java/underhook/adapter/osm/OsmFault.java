package underhook.adapter.osm;

import java.io.IOException;
import underhook.app.port.Fault;
import underhook.core.finding.FindingCode;

/** A file that cannot be read as meant. It is an IOException so that it passes through streams. */
final class OsmFault extends IOException {
    private static final long serialVersionUID = 1L;

    private final FindingCode code;
    private final int line;
    private final String value;
    private final String allowed;

    private OsmFault(FindingCode code, int line, String what, String[] valueAndAllowed) {
        super(what);
        this.code = code;
        this.line = line;
        value = valueAndAllowed[0];
        allowed = valueAndAllowed[1];
    }

    static OsmFault unreadable(String what, String value, String allowed) {
        return new OsmFault(
                FindingCode.FILE_UNREADABLE, 0, what, new String[] {shortened(value), allowed});
    }

    static OsmFault version(String what, String value, String allowed) {
        return new OsmFault(
                FindingCode.VERSION_UNKNOWN, 0, what, new String[] {shortened(value), allowed});
    }

    static OsmFault tooLarge(String what, String allowed) {
        return new OsmFault(FindingCode.TOO_LARGE, 0, what, new String[] {"", allowed});
    }

    OsmFault at(int newLine) {
        OsmFault moved =
                new OsmFault(
                        code, newLine, String.valueOf(getMessage()), new String[] {value, allowed});
        moved.initCause(this);
        return moved;
    }

    Fault toFault(String file) {
        return new Fault(code, file, line, "", String.valueOf(getMessage()), value, allowed);
    }

    private static String shortened(String text) {
        return text.length() > 80 ? text.substring(0, 80) : text;
    }
}
