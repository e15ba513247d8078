package underhook.core.ahead;

import java.util.List;
import java.util.Optional;

/**
 * What a job states that no plan is made of.
 *
 * @param notices in the order of the file; empty when the job names no file of them
 * @param climate the air of the job's month; empty when the job names no file of it
 * @param archive hours of past years; empty when the job names no file of them
 * @param permits what letters say; empty when the job names no file of them
 */
public record Beside(
        Optional<List<Notice>> notices,
        Optional<MonthClimate> climate,
        Optional<HourArchive> archive,
        Optional<List<PermitRule>> permits) {
    /** Nothing is stated. */
    public static final Beside NONE =
            new Beside(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());

    public Beside {
        notices = notices.map(List::copyOf);
        permits = permits.map(List::copyOf);
    }
}
