package underhook.web;

import java.io.IOException;

/** A request that is answered with no. */
final class Refused extends IOException {
    private static final long serialVersionUID = 1L;

    private final int status;

    Refused(int status, String sentence) {
        super(sentence);
        this.status = status;
    }

    static Refused unknown() {
        return new Refused(404, "There is nothing of that name.");
    }

    int status() {
        return status;
    }
}
