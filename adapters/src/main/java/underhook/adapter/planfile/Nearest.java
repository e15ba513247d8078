package underhook.adapter.planfile;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;

/** The known word that looks most like a given one. */
final class Nearest {
    private Nearest() {}

    static String of(String word, Collection<String> known) {
        return known.stream()
                .min(
                        Comparator.comparingInt((String other) -> distance(word, other))
                                .thenComparing(Comparator.naturalOrder()))
                .orElse("");
    }

    /** Letters to add, drop or change, upper and lower case being the same (Levenshtein). */
    private static int distance(String one, String other) {
        String a = one.toLowerCase(Locale.ROOT);
        String b = other.toLowerCase(Locale.ROOT);
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int change = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(change, Math.min(row[j], row[j - 1]) + 1);
            }
        }
        return row[b.length()];
    }
}
