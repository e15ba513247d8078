package underhook.adapter.job.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.ObjectReadContext;
import tools.jackson.core.StreamReadConstraints;
import tools.jackson.core.exc.UnexpectedEndOfInputException;
import tools.jackson.core.json.JsonFactory;
import underhook.adapter.job.text.NumberText.Decimal;
import underhook.adapter.job.text.Source.At;
import underhook.adapter.job.text.Source.Found;
import underhook.core.finding.FindingCode;

/** Reads the features of a GeoJSON file one by one, as trees that know their lines. */
public final class Json {
    private static final int DEEPEST = 30;
    private static final JsonFactory FACTORY =
            JsonFactory.builder()
                    .streamReadConstraints(
                            StreamReadConstraints.builder().maxNestingDepth(DEEPEST).build())
                    .build();

    private Json() {}

    /**
     * Hands every member of the file's object to the reader; each element of {@code features} comes on
     * its own, so that a large file is never in memory as one tree.
     */
    public static void readFeatures(String text, Source source, Consumer<Node.Entry> member) {
        try (JsonParser parser = FACTORY.createParser(ObjectReadContext.empty(), text)) {
            if (parser.nextToken() != JsonToken.START_OBJECT) {
                source.fault(
                        FindingCode.FILE_UNREADABLE,
                        new At(1, ""),
                        "is no GeoJSON",
                        Found.allowing("an object with \"features\""));
                return;
            }
            while (parser.nextToken() == JsonToken.PROPERTY_NAME) {
                String name = parser.currentName();
                int line = line(parser);
                boolean isList = parser.nextToken() == JsonToken.START_ARRAY;
                if (name.equals("features") && isList) {
                    while (parser.nextToken() != JsonToken.END_ARRAY) {
                        int start = line(parser);
                        member.accept(new Node.Entry(start, "feature", toNode(parser)));
                    }
                    member.accept(new Node.Entry(line, name, new Node.Items(line, List.of())));
                } else {
                    member.accept(new Node.Entry(line, name, toNode(parser)));
                }
            }
            if (parser.nextToken() != null) {
                source.fault(
                        FindingCode.FILE_UNREADABLE,
                        new At(line(parser), ""),
                        "goes on after its end",
                        Found.allowing("one object"));
            }
        } catch (JacksonException wrong) {
            int line = wrong.getLocation() == null ? 0 : wrong.getLocation().getLineNr();
            source.fault(
                    FindingCode.FILE_UNREADABLE,
                    new At(Math.max(0, line), ""),
                    wrong instanceof UnexpectedEndOfInputException
                            ? "ends in the middle. Perhaps it was cut off when it was copied"
                            : "is no JSON from here on",
                    Found.NOTHING);
        }
    }

    /** The properties of a feature as fields. */
    public static Fields fields(Node.Mapping properties, Source source, Renaming renaming) {
        return new Fields(
                new Fields.Context(source, Style.TABLE, Decimal.POINT, Optional.empty(), renaming),
                properties);
    }

    private static int line(JsonParser parser) {
        return parser.currentTokenLocation().getLineNr();
    }

    /** The value at the parser's current token; depth is bounded by the parser. */
    private static Node toNode(JsonParser parser) {
        int line = line(parser);
        JsonToken token = parser.currentToken();
        if (token == JsonToken.START_OBJECT) {
            List<Node.Entry> entries = new ArrayList<>();
            while (parser.nextToken() == JsonToken.PROPERTY_NAME) {
                String name = parser.currentName();
                int at = line(parser);
                parser.nextToken();
                entries.add(new Node.Entry(at, name, toNode(parser)));
            }
            return new Node.Mapping(line, entries);
        }
        if (token == JsonToken.START_ARRAY) {
            List<Node> nodes = new ArrayList<>();
            while (parser.nextToken() != JsonToken.END_ARRAY) {
                nodes.add(toNode(parser));
            }
            return new Node.Items(line, nodes);
        }
        boolean nothing = token == JsonToken.VALUE_NULL || token == null;
        return new Node.Scalar(line, nothing ? "" : parser.getString());
    }
}
