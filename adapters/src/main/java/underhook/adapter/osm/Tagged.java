package underhook.adapter.osm;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * The tags of one thing, seen from the ground: what is out of use or being built still stands there, what
 * is planned or gone does not, and what lies below ground is in nobody's way.
 *
 * @source OSM-WIKI pages "Lifecycle prefix", "Key:tunnel", "Key:location"
 */
final class Tagged {
    /** Out of use, a wire still hangs and a mast still stands; being built, they may stand by then. */
    private static final List<String> STANDING_PREFIXES =
            List.of("disused:", "abandoned:", "construction:", "ruins:");

    private static final Set<String> STANDING_KEYS =
            Set.of("power", "aerialway", "communication", "telecom", "man_made", "building");

    /** As a value, these name the key whose value says what it was or will be. */
    private static final Set<String> STANDING_VALUES =
            Set.of("construction", "disused", "abandoned");

    private static final Set<String> BUILT_KEYS = Set.of("highway", "railway");

    private static final Set<String> NOT_THERE =
            Set.of("no", "proposed", "planned", "razed", "demolished", "removed", "destroyed");

    /** Tunnels in which one is still seen from above, or under no more than a roof. */
    private static final Set<String> OPEN_TUNNELS =
            Set.of("no", "avalanche_protector", "building_passage");

    private final Map<String, String> tags = new HashMap<>();
    private final boolean isBelowGround;

    Tagged(Map<String, String> text) {
        text.forEach((key, value) -> tags.put(key, value.strip().toLowerCase(Locale.ROOT)));
        for (String prefix : STANDING_PREFIXES) {
            for (String key : STANDING_KEYS) {
                String value = tags.get(prefix + key);
                if (value != null) {
                    tags.putIfAbsent(key, value);
                }
            }
        }
        tags.replaceAll(this::standing);
        isBelowGround =
                !OPEN_TUNNELS.contains(tags.getOrDefault("tunnel", "no"))
                        || Set.of("underground", "underwater").contains(get("location"));
    }

    private String standing(String key, String value) {
        boolean counts =
                (STANDING_KEYS.contains(key) && STANDING_VALUES.contains(value))
                        || (BUILT_KEYS.contains(key) && value.equals("construction"));
        if (!counts) {
            return value;
        }
        String was = get(value);
        return was.isEmpty() || NOT_THERE.contains(was) ? "yes" : was;
    }

    /** A value in small letters; empty when there is none. */
    String get(String key) {
        String value = tags.get(key);
        return value == null ? "" : value;
    }

    boolean isBelowGround() {
        return isBelowGround;
    }

    Map<String, String> toMap() {
        return tags;
    }

    /** Whether a key has one of some values; {@code *} is any that is there. */
    boolean has(String key, Set<String> values) {
        String value = get(key);
        if (value.isEmpty()) {
            return false;
        }
        for (String one : value.split(";")) {
            String word = one.strip();
            if (values.contains(word) || (values.contains("*") && !NOT_THERE.contains(word))) {
                return true;
            }
        }
        return false;
    }
}
