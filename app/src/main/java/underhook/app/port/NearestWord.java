package underhook.app.port;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Finds the known word that somebody may have meant. */
public final class NearestWord {
    private static final int MOST_LISTED = 12;
    private static final int LONGEST_LISTED = 40;

    private static final Pattern NAME_IN_UNIT =
            Pattern.compile(
                    ".+[_-](m|ft|km|nm|mi|kg|lb|t|kt|mph|fpm|c|f|k|hpa|pa|inhg|mmhg|s|min|h|deg|rad|l|gal|n|kn|lbf)");

    private NearestWord() {}

    /** The nearest known word, when one is near: at most a third of its letters differ, or two. */
    public static Optional<String> find(String word, Collection<String> known) {
        String wanted = word.toLowerCase(Locale.ROOT);
        Optional<String> best = Optional.empty();
        int least = Integer.MAX_VALUE;
        if (wanted.length() > 60) {
            return best;
        }
        for (String candidate : new TreeSet<>(known)) {
            int distance = distance(wanted, candidate.toLowerCase(Locale.ROOT));
            int allowed = Math.max(2, candidate.length() / 3);
            if (distance < least
                    && distance <= allowed
                    && distance < Math.max(2, candidate.length())) {
                least = distance;
                best = Optional.of(candidate);
            }
        }
        return best;
    }

    /** The word that looks most like it, however far off; empty when none is known. */
    public static String of(String word, Collection<String> known) {
        String wanted = word.toLowerCase(Locale.ROOT);
        return known.stream()
                .min(
                        Comparator.comparingInt(
                                        (String other) ->
                                                distance(wanted, other.toLowerCase(Locale.ROOT)))
                                .thenComparing(Comparator.naturalOrder()))
                .orElse("");
    }

    /** "perhaps X is meant", or the words that are known when none is near. */
    public static String hint(String word, Collection<String> known) {
        return find(word, known)
                .map(
                        near ->
                                "perhaps \""
                                        + near
                                        + "\" is meant"
                                        + (isInAnotherUnit(word, near)
                                                ? ", with figures in that unit"
                                                : ""))
                .orElseGet(() -> list(known));
    }

    /** Whoever only changed the name would have the old figures read in the new unit. */
    private static boolean isInAnotherUnit(String word, String near) {
        Matcher one = NAME_IN_UNIT.matcher(word.toLowerCase(Locale.ROOT));
        Matcher other = NAME_IN_UNIT.matcher(near.toLowerCase(Locale.ROOT));
        return one.matches() && other.matches() && !one.group(1).equals(other.group(1));
    }

    private static String list(Collection<String> known) {
        if (known.isEmpty()) {
            return "none is known";
        }
        String first =
                known.stream()
                        .sorted()
                        .limit(MOST_LISTED)
                        .map(NearestWord::cut)
                        .collect(Collectors.joining(", "));
        return "known are " + first + (known.size() > MOST_LISTED ? ", ..." : "");
    }

    private static String cut(String word) {
        return word.length() <= LONGEST_LISTED ? word : word.substring(0, LONGEST_LISTED) + "...";
    }

    /** Letters to change, add or leave out, swapped neighbours counting once. */
    private static int distance(String a, String b) {
        int[][] d = new int[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) {
            for (int j = 0; j <= b.length(); j++) {
                if (i == 0 || j == 0) {
                    d[i][j] = i + j;
                    continue;
                }
                int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
                d[i][j] =
                        Math.min(d[i - 1][j - 1] + change, Math.min(d[i - 1][j], d[i][j - 1]) + 1);
                if (i > 1
                        && j > 1
                        && a.charAt(i - 1) == b.charAt(j - 2)
                        && a.charAt(i - 2) == b.charAt(j - 1)) {
                    d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
                }
            }
        }
        return d[a.length()][b.length()];
    }
}
