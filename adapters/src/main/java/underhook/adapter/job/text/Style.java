package underhook.adapter.job.text;

import java.util.Locale;

/** How names are spelt in a file. */
enum Style {
    /** Small letters with hyphens, exactly. */
    YAML {
        @Override
        String canonical(String typed) {
            // A hyphen and an underscore never mean the same here.
            return typed.indexOf('_') >= 0 ? typed.replace('_', ' ') : typed.replace('-', '_');
        }

        @Override
        String shown(String canonical) {
            return canonical.replace('_', '-');
        }
    },
    /** Underscores; case does not count, blanks and hyphens count as underscores. */
    TABLE {
        @Override
        String canonical(String typed) {
            return typed.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s\\u00a0-]+", "_");
        }

        @Override
        String shown(String canonical) {
            return canonical;
        }
    };

    abstract String canonical(String typed);

    abstract String shown(String canonical);
}
