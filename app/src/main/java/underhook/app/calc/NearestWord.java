package underhook.app.calc;

import java.util.Collection;
import java.util.Optional;

/** Finds the word a person probably meant: fewest letters to insert, drop or change. */
final class NearestWord {
    private NearestWord() {}

    /** The nearest of the known words; empty when none shares half its letters. */
    static Optional<String> find(String word, Collection<String> known) {
        String best = "";
        int least = Integer.MAX_VALUE;
        for (String candidate : known) {
            int distance = distance(word, candidate);
            if (distance < least) {
                least = distance;
                best = candidate;
            }
        }
        int room = Math.max(1, Math.max(word.length(), best.length()) / 2);
        return least <= room ? Optional.of(best) : Optional.empty();
    }

    private static int distance(String a, String b) {
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
