package underhook.adapter.planfile;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.ObjectReadContext;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.core.json.JsonFactory;

/**
 * A JSON value that knows its line.
 *
 * @param text of a string or number as it stands, else the word for it
 * @param line from 1
 */
record Located(
        Kind kind, String text, Map<String, Located> members, List<Located> items, int line) {
    /** What JSON knows. */
    enum Kind {
        OBJECT,
        LIST,
        TEXT,
        NUMBER,
        BOOLEAN,
        NULL
    }

    private static final JsonFactory FACTORY =
            JsonFactory.builder().enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION).build();

    /**
     * Reads one value that fills the whole text.
     *
     * @throws tools.jackson.core.JacksonException if the text is no JSON, with the place
     */
    static Located parse(String json) {
        try (JsonParser parser = FACTORY.createParser(ObjectReadContext.empty(), json)) {
            JsonToken first = parser.nextToken();
            if (first == null) {
                return new Located(Kind.NULL, "nothing", Map.of(), List.of(), 1);
            }
            Located value = value(parser, first);
            int line = parser.currentTokenLocation().getLineNr();
            if (parser.nextToken() != null) {
                return new Located(Kind.NULL, "more than one value", Map.of(), List.of(), line);
            }
            return value;
        }
    }

    private static Located value(JsonParser parser, JsonToken token) {
        int line = parser.currentTokenLocation().getLineNr();
        return switch (token) {
            case START_OBJECT -> object(parser, line);
            case START_ARRAY -> list(parser, line);
            case VALUE_STRING -> leaf(Kind.TEXT, parser.getString(), line);
            case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT ->
                    leaf(Kind.NUMBER, parser.getString(), line);
            case VALUE_TRUE, VALUE_FALSE -> leaf(Kind.BOOLEAN, parser.getString(), line);
            default -> leaf(Kind.NULL, "null", line);
        };
    }

    private static Located leaf(Kind kind, String text, int line) {
        return new Located(kind, text, Map.of(), List.of(), line);
    }

    private static Located object(JsonParser parser, int line) {
        Map<String, Located> members = new LinkedHashMap<>();
        while (parser.nextToken() != JsonToken.END_OBJECT) {
            String name = parser.currentName();
            members.put(name, value(parser, parser.nextToken()));
        }
        return new Located(Kind.OBJECT, "an object", members, List.of(), line);
    }

    private static Located list(JsonParser parser, int line) {
        List<Located> items = new ArrayList<>();
        for (JsonToken token = parser.nextToken();
                token != JsonToken.END_ARRAY;
                token = parser.nextToken()) {
            items.add(value(parser, token));
        }
        return new Located(Kind.LIST, "a list", Map.of(), items, line);
    }
}
