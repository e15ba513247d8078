package underhook.app.port;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import underhook.core.job.InputFile;
import underhook.core.job.Job;

/** What a written file says of the files that it was made from. */
public final class Attribution {
    /** Where the text of the database licence stands. */
    public static final String ODBL_ADDRESS = "https://opendatacommons.org/licenses/odbl/1-0/";

    private static final String ODBL_TEXT =
            "This file holds data from a database under the Open Database License (ODbL) 1.0 and is"
                    + " itself under ODbL 1.0: "
                    + ODBL_ADDRESS;

    private Attribution() {}

    /** One line for each different attribution and licence of the inputs, in the order of the job. */
    public static List<String> lines(Job job) {
        return job.inputs().stream()
                .map(Attribution::line)
                .filter(line -> !line.isEmpty())
                .distinct()
                .toList();
    }

    private static String line(InputFile input) {
        String who = input.attribution().strip();
        String licence = input.licence().strip();
        if (who.isEmpty() || licence.isEmpty() || who.contains(licence)) {
            return who.isEmpty() ? licence : who;
        }
        return who + " (" + licence + ")";
    }

    /** What the file's own licence must be, when an input under ODbL asks for it. */
    public static Optional<String> shareAlike(Job job) {
        boolean odbl =
                job.inputs().stream()
                        .flatMap(input -> Stream.of(input.licence(), input.attribution()))
                        .map(text -> text.toLowerCase(Locale.ROOT))
                        .anyMatch(
                                text ->
                                        text.contains("odbl")
                                                || text.contains("open database licen"));
        return odbl ? Optional.of(ODBL_TEXT) : Optional.empty();
    }

    /** Caution, attributions and licence as lines of text, for files that take free text. */
    public static List<String> notice(Job job) {
        return Stream.of(Stream.of(Caution.TEXT), lines(job).stream(), shareAlike(job).stream())
                .flatMap(lines -> lines)
                .toList();
    }
}
