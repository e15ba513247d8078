package underhook.adapter.demo;

import java.time.LocalDate;
import java.util.Locale;
import java.util.Random;

/**
 * Invented weather of eight Septembers, hour by hour from 05:00 to 19:00.
 *
 * <p>Spells of calm, breezy and stormy days follow each other; the wind grows into the afternoon as on the
 * demo day itself. Same seed, same bytes.
 */
final class DemoArchive {
    private static final int FIRST_YEAR = 2018;
    private static final int LAST_YEAR = 2025;
    private static final int FIRST_HOUR = 5;
    private static final int LAST_HOUR = 19;

    /** How a day is: wind at dawn and its growth by noon, kt; gust over mean; cloud base, ft; visibility, m. */
    private enum Spell {
        CALM(3, 6, 1.4, 5000, 9999),
        BREEZY(6, 14, 1.6, 3500, 9999),
        STORMY(16, 14, 1.7, 1800, 6000),
        FOGGY(2, 5, 1.3, 900, 3000);

        private final int dawnKt;
        private final int growthKt;
        private final double gustRatio;
        private final int cloudFt;
        private final int visibilityM;

        Spell(int dawnKt, int growthKt, double gustRatio, int cloudFt, int visibilityM) {
            this.dawnKt = dawnKt;
            this.growthKt = growthKt;
            this.gustRatio = gustRatio;
            this.cloudFt = cloudFt;
            this.visibilityM = visibilityM;
        }
    }

    private final Random random = new Random(20260908);
    private final StringBuilder rows =
            new StringBuilder("time,wind_kt,gust_kt,cloud_base_ft,visibility_m\n");

    private DemoArchive() {}

    static String csv() {
        DemoArchive archive = new DemoArchive();
        for (int year = FIRST_YEAR; year <= LAST_YEAR; year++) {
            archive.september(year);
        }
        return archive.rows.toString();
    }

    private void september(int year) {
        Spell spell = Spell.CALM;
        for (int day = 1; day <= 30; day++) {
            // Weather stays as it is for three days in the middle.
            if (random.nextInt(3) == 0) {
                spell = Spell.values()[random.nextInt(Spell.values().length)];
            }
            for (int hour = FIRST_HOUR; hour <= LAST_HOUR; hour++) {
                row(LocalDate.of(year, 9, day), hour, spell);
            }
        }
    }

    private void row(LocalDate date, int hour, Spell spell) {
        double ofDay = Math.sin(Math.PI * Math.min(1, Math.max(0, (hour - FIRST_HOUR) / 14.0)));
        int meanKt = (int) Math.round(spell.dawnKt + spell.growthKt * ofDay + random.nextInt(3));
        int gustKt = (int) Math.round(meanKt * spell.gustRatio + random.nextInt(3));
        // Fog lifts by ten.
        boolean isLifted = spell == Spell.FOGGY && hour >= 10;
        rows.append(
                String.format(
                        Locale.ROOT,
                        "%sT%02d:00-01:00,%d,%d,%d,%d\n",
                        date,
                        hour,
                        meanKt,
                        gustKt,
                        isLifted ? 2500 : spell.cloudFt,
                        isLifted ? 8000 : spell.visibilityM));
    }
}
