package underhook.core.job;

import java.util.Locale;

/** In which the papers of a crew are printed. */
public enum Language {
    EN,
    DE;

    /** ISO 639-1, as written in files. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
