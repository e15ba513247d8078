package underhook.core.plan;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Gear that the day needs.
 *
 * @param count how many are in stock
 * @param atOnce most that one lift needs
 * @param forDay how many all lifts need when none comes back in between
 * @param dueOn last day without a new inspection; empty when nobody read the tag
 * @param uses what it is used for
 */
public record KitItem(
        String name,
        int count,
        int atOnce,
        int forDay,
        Optional<LocalDate> dueOn,
        List<String> uses) {
    /** So many days ahead it is said that an item falls due. @source PRACTICE no source: a month's notice */
    public static final int SOON_DAYS = 30;

    /** Whether it may be used on that day and falls due within the days after. */
    public boolean isDueSoon(LocalDate day) {
        return dueOn.filter(due -> !due.isBefore(day) && !due.isAfter(day.plusDays(SOON_DAYS)))
                .isPresent();
    }

    public KitItem {
        Objects.requireNonNull(name, "name");
        uses = List.copyOf(uses);
        if (count < 0 || atOnce < 0 || forDay < atOnce) {
            throw new IllegalArgumentException("kit " + name + " has a count out of range.");
        }
    }
}
