package underhook.web;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** Values of a request. */
final class Asked {
    private Asked() {}

    static String text(ObjectNode asked, String name) throws Refused {
        return text(asked, name, 1000);
    }

    /** A text that must be there. */
    static String text(ObjectNode asked, String name, int mostLength) throws Refused {
        String text = text(asked, name, mostLength, "");
        if (text.isBlank()) {
            throw new Refused(400, name + " is missing.");
        }
        return text;
    }

    static String text(ObjectNode asked, String name, int mostLength, String otherwise)
            throws Refused {
        String text = asked.path(name).asString("").strip();
        if (text.length() > mostLength) {
            throw new Refused(400, name + " can hold at most " + mostLength + " characters.");
        }
        return text.isEmpty() ? otherwise : text;
    }

    /** The head that the page has seen. */
    static long revision(ObjectNode asked) throws Refused {
        JsonNode revision = asked.path("revision");
        if (!revision.isIntegralNumber()) {
            throw new Refused(400, "revision is missing.");
        }
        return revision.asLong();
    }

    static int whole(JsonNode asked, String name) throws Refused {
        JsonNode value = asked.path(name);
        if (!value.isInt()) {
            throw new Refused(400, name + " must be a whole number.");
        }
        return value.asInt();
    }

    static long number(String text) throws Refused {
        if (!text.matches("[0-9]{1,15}")) {
            throw new Refused(400, "revision is missing.");
        }
        return Long.parseLong(text);
    }
}
