package underhook.web;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;
import underhook.app.port.KeptTap;
import underhook.core.flown.Tap;
import underhook.core.flown.TapKind;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;

/** Taps as they travel. */
final class TapJson {
    private static final int MOST_ID = 64;
    private static final int MOST_NAME = 60;
    private static final int MOST_NOTE = 1000;
    private static final int MOST_LOADS = 12;

    private TapJson() {}

    /** A tap as a device sends it. */
    static Tap tap(ObjectNode sent) throws Refused {
        List<LoadId> loads = new ArrayList<>();
        for (JsonNode load : sent.path("loads")) {
            loads.add(new LoadId(load.asString("")));
        }
        if (loads.size() > MOST_LOADS || loads.stream().anyMatch(TapJson::isOdd)) {
            throw new Refused(400, "loads must be at most " + MOST_LOADS + " ids.");
        }
        String place = Asked.text(sent, "place", MOST_NAME, "");
        String undoes = Asked.text(sent, "undoes", MOST_ID, "");
        return new Tap(
                Asked.text(sent, "id", MOST_ID),
                Instant.parse(Asked.text(sent, "at", MOST_NAME)),
                Asked.text(sent, "by", MOST_NAME),
                Asked.text(sent, "device", MOST_NAME),
                kind(Asked.text(sent, "kind", MOST_NAME)),
                loads,
                place.isEmpty() ? Optional.empty() : Optional.of(new PlaceId(place)),
                new Tap.Amount(
                        number(sent, "massKg"),
                        number(sent, "lineM"),
                        sent.path("people").asInt(0)),
                undoes.isEmpty() ? Optional.empty() : Optional.of(undoes),
                Asked.text(sent, "note", MOST_NOTE, ""));
    }

    private static boolean isOdd(LoadId load) {
        return load.value().length() > MOST_NAME || load.value().contains("|");
    }

    private static OptionalDouble number(ObjectNode sent, String name) {
        JsonNode value = sent.path(name);
        return value.isNumber() ? OptionalDouble.of(value.asDouble()) : OptionalDouble.empty();
    }

    private static TapKind kind(String word) throws Refused {
        return Arrays.stream(TapKind.values())
                .filter(kind -> word(kind).equals(word))
                .findFirst()
                .orElseThrow(() -> new Refused(400, "there is no kind " + word + " of taps."));
    }

    /** As in the table of taps. */
    static String word(TapKind kind) {
        return kind.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    static ObjectNode tap(Tap tap) {
        ObjectNode node = Json.object();
        node.put("id", tap.id());
        node.put("at", tap.at().toString());
        node.put("by", tap.by());
        node.put("device", tap.device());
        node.put("kind", word(tap.kind()));
        node.set("loads", Json.texts(tap.loads()));
        node.put("place", tap.place().map(PlaceId::value).orElse(""));
        tap.amount().massKg().ifPresent(massKg -> node.put("massKg", massKg));
        tap.amount().lengthM().ifPresent(lengthM -> node.put("lineM", lengthM));
        if (tap.amount().people() > 0) {
            node.put("people", tap.amount().people());
        }
        node.put("undoes", tap.undoes().orElse(null));
        node.put("note", tap.note());
        return node;
    }

    static ObjectNode row(KeptTap row) {
        ObjectNode node = tap(row.tap());
        node.put("number", row.number());
        node.put("role", row.arrival().role());
        node.put("sentAt", row.arrival().sentAt().toString());
        node.put("receivedAt", row.arrival().receivedAt().toString());
        node.put("anyway", row.arrival().anyway());
        node.put("plan", row.arrival().plan());
        node.put("hash", row.hash());
        return node;
    }
}
