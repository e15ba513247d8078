package underhook.core.job;

import java.time.LocalDate;
import java.util.Objects;

/**
 * One line of the register of hazards: somebody has looked at a thing and says what is so.
 *
 * @param subject id of a wire, a map feature, a zone or a place
 * @param what what was seen, in words
 * @param by role or initials of who looked
 * @param on day of the look
 * @param source file it is from
 */
public record Confirmation(String subject, String what, String by, LocalDate on, String source) {
    public Confirmation {
        Objects.requireNonNull(subject, "subject");
        Objects.requireNonNull(on, "on");
    }
}
