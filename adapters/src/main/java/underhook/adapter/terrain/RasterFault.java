package underhook.adapter.terrain;

import underhook.app.port.Fault;
import underhook.core.finding.FindingCode;

/** A raster that cannot be read as meant. */
final class RasterFault extends Exception {
    private static final long serialVersionUID = 1L;

    private final FindingCode code;
    private final int line;
    private final String value;
    private final String allowed;

    RasterFault(FindingCode code, int line, String what, String[] valueAndAllowed) {
        super(what);
        this.code = code;
        this.line = line;
        value = valueAndAllowed[0];
        allowed = valueAndAllowed[1];
    }

    static RasterFault unreadable(String what, String value, String allowed) {
        return new RasterFault(
                FindingCode.RASTER_UNREADABLE, 0, what, new String[] {value, allowed});
    }

    static RasterFault unreadable(int line, String what, String value) {
        return new RasterFault(FindingCode.RASTER_UNREADABLE, line, what, new String[] {value, ""});
    }

    static RasterFault tooLarge(String what, String value, String allowed) {
        return new RasterFault(FindingCode.TOO_LARGE, 0, what, new String[] {value, allowed});
    }

    Fault toFault(String file) {
        return new Fault(code, file, line, "", String.valueOf(getMessage()), value, allowed);
    }
}
