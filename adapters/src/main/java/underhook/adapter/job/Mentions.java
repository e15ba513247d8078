package underhook.adapter.job;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import underhook.adapter.job.text.Fields;
import underhook.adapter.job.text.Source.Found;
import underhook.app.port.NearestWord;
import underhook.core.finding.FindingCode;

/** Which ids the files declare, and which they speak of. Mutable. */
final class Mentions {
    private final Map<Family, Map<String, String>> declared = new EnumMap<>(Family.class);
    private final Set<Family> unread = EnumSet.noneOf(Family.class);
    private final List<Mention> mentions = new ArrayList<>();

    /** What an id may stand for. */
    enum Family {
        PLACE("place"),
        LOAD("load"),
        KIND("kind"),
        CREW("crew"),
        WIRE("wire"),
        ZONE("zone"),
        FEATURE("feature"),
        AREA("release area"),
        GEAR("gear");

        private final String word;

        Family(String word) {
            this.word = word;
        }
    }

    /** What a hazard of the register may be. */
    static final Set<Family> HAZARDS =
            EnumSet.of(Family.WIRE, Family.FEATURE, Family.ZONE, Family.PLACE);

    private record Mention(Set<Family> families, Fields fields, String field, String id) {
        String words() {
            return String.join(", ", families.stream().map(family -> family.word).toList());
        }
    }

    /** Declares an id, in a faulty row too, so that one fault does not bring others after it. */
    void declare(Family family, Fields fields, String field, String id) {
        if (id.isEmpty()) {
            return;
        }
        String here = fields.source().name() + ":" + fields.line();
        String first = known(family).putIfAbsent(id, here);
        if (first == null && family == Family.LOAD) {
            first = known(Family.PLACE).get(id);
        }
        if (first != null) {
            fields.fault(
                    FindingCode.ID_DUPLICATE,
                    field,
                    "is taken, first in " + first,
                    new Found(id, "an id of its own"));
        }
    }

    /** Declares an id that was made up for something which no register of ours names. */
    void declare(Family family, String id, String where) {
        known(family).put(id, where);
    }

    /** Whether an id stands for anything that a leg can come near. */
    boolean isTaken(String id) {
        return HAZARDS.stream().anyMatch(family -> known(family).containsKey(id));
    }

    /** Speaks of an id. */
    void mention(Family family, Fields fields, String field, String id) {
        mention(EnumSet.of(family), fields, field, id);
    }

    /** Speaks of an id that may stand for any of these. */
    void mention(Set<Family> families, Fields fields, String field, String id) {
        if (!id.isEmpty()) {
            mentions.add(new Mention(families, fields, field, id));
        }
    }

    /** A file could not be read, so that nothing is known about what it declares. */
    void setUnread(Family family) {
        unread.add(family);
    }

    boolean has(Family family) {
        return !known(family).isEmpty();
    }

    /** Reports every id that nothing declares. */
    void check() {
        for (Mention mention : mentions) {
            Set<String> known = new HashSet<>();
            mention.families.forEach(family -> known.addAll(known(family).keySet()));
            if (!known.contains(mention.id)
                    && mention.families.stream().noneMatch(unread::contains)) {
                mention.fields.fault(
                        FindingCode.ID_UNKNOWN,
                        mention.field,
                        "is no known " + mention.words(),
                        new Found(mention.id, NearestWord.hint(mention.id, known)));
            }
        }
    }

    private Map<String, String> known(Family family) {
        return declared.computeIfAbsent(family, any -> new LinkedHashMap<>());
    }
}
