package underhook.adapter.osm;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamReader;
import org.jspecify.annotations.Nullable;
import underhook.adapter.osm.OsmFile.Member;
import underhook.adapter.osm.OsmFile.Part;
import underhook.adapter.osm.OsmFile.Sink;
import underhook.adapter.osm.OsmFile.Spot;

/** Makes nodes, ways and relations of the parser's events. Mutable while it reads. */
final class XmlThings {
    private static final int DEEPEST = 32;
    private static final int MOST_TAGS = 10_000;
    private static final int LONGEST_NUMBER = 40;
    private static final double E7_PER_DEG = 1e7;

    private final XMLStreamReader reader;
    private final Set<Part> wanted;
    private final Sink sink;
    private final Map<String, String> tags = new HashMap<>();
    private final List<Member> members = new ArrayList<>();
    private final StringBuilder remark = new StringBuilder();
    private LongList nodes = new LongList();
    private String thing = "";
    private int depth;

    /** Where the thing that is being read says it is; null where it is no node or says nothing. */
    private @Nullable Spot spot;

    private long id;

    XmlThings(XMLStreamReader reader, Set<Part> wanted, Sink sink) {
        this.reader = reader;
        this.wanted = wanted;
        this.sink = sink;
    }

    void accept(int event) throws OsmFault {
        try {
            switch (event) {
                case XMLStreamConstants.START_ELEMENT -> start(reader.getLocalName());
                case XMLStreamConstants.END_ELEMENT -> end();
                case XMLStreamConstants.DTD, XMLStreamConstants.ENTITY_REFERENCE ->
                        throw OsmFault.unreadable(
                                "declares or uses entities of its own",
                                "",
                                "a file without a document type");
                case XMLStreamConstants.CHARACTERS -> {
                    if (thing.equals("remark") && remark.length() < OsmFile.LONGEST_TEXT) {
                        remark.append(reader.getText());
                    }
                }
                default -> {}
            }
        } catch (OsmFault e) {
            throw e.at(reader.getLocation().getLineNumber());
        }
    }

    private void start(String name) throws OsmFault {
        depth++;
        if (depth > DEEPEST) {
            throw OsmFault.unreadable("is nested too deep", "", "");
        }
        if (depth == 1) {
            checkRoot(name);
        } else if (depth == 2) {
            startThing(name);
        } else if (depth == 3 && !thing.isEmpty()) {
            addPart(name);
        }
    }

    private void checkRoot(String name) throws OsmFault {
        if (!name.equals("osm")) {
            throw OsmFault.unreadable("is no map", name, "osm as its outermost word");
        }
        String version = attribute("version");
        if (!version.isEmpty() && !version.equals("0.6")) {
            throw OsmFault.version("is of another version", version, "0.6");
        }
    }

    private void startThing(String name) throws OsmFault {
        tags.clear();
        members.clear();
        nodes = new LongList();
        remark.setLength(0);
        spot = null;
        // An editor keeps what it has deleted until it has told the server.
        boolean deleted =
                attribute("visible").equals("false") || attribute("action").equals("delete");
        thing = deleted ? "" : name;
        switch (thing) {
            case "node" -> {
                id = whole("id");
                if (!attribute("lat").isEmpty()) {
                    spot = Spot.of(e7("lat"), e7("lon"));
                }
            }
            case "way", "relation" -> id = whole("id");
            case "create", "modify", "delete", "action" ->
                    throw OsmFault.unreadable("holds changes, not a map", name, "");
            default -> {}
        }
    }

    private void addPart(String name) throws OsmFault {
        switch (name) {
            case "tag" -> {
                tags.put(shortened(attribute("k")), shortened(attribute("v")));
            }
            case "nd" -> nodes.add(whole("ref"));
            case "member" -> {
                if (attribute("type").equals("way")) {
                    members.add(Member.of(whole("ref"), attribute("role")));
                }
            }
            default -> {}
        }
        if (tags.size() > MOST_TAGS
                || nodes.size() > OsmFile.MOST_REFERENCES
                || members.size() > OsmFile.MOST_REFERENCES) {
            throw OsmFault.tooLarge(
                    "has a thing with too many parts", "at most " + OsmFile.MOST_REFERENCES);
        }
    }

    private void end() throws OsmFault {
        depth--;
        if (depth != 1) {
            return;
        }
        switch (thing) {
            case "node" -> {
                Spot at = spot;
                if (at != null && wanted.contains(Part.NODES)) {
                    sink.node(id, at, tagsNow());
                }
            }
            case "way" -> {
                if (wanted.contains(Part.WAYS)) {
                    sink.way(id, nodes.toArray(), tagsNow());
                }
            }
            case "relation" -> {
                if (wanted.contains(Part.RELATIONS)) {
                    sink.relation(id, List.copyOf(members), tagsNow());
                }
            }
            case "remark" -> checkRemark();
            default -> {}
        }
        thing = "";
    }

    private OsmFile.Tags tagsNow() {
        Map<String, String> now = Map.copyOf(tags);
        return now.isEmpty() ? OsmFile.Tags.NONE : () -> now;
    }

    /** A query that ran out of time leaves a file that looks whole but is not. */
    private void checkRemark() throws OsmFault {
        String text = remark.toString().strip();
        if (text.toLowerCase(Locale.ROOT).contains("error")) {
            throw OsmFault.unreadable("is not complete: its query failed", text, "");
        }
    }

    private static String shortened(String text) {
        return text.substring(0, Math.min(OsmFile.LONGEST_TEXT, text.length()));
    }

    private String attribute(String name) {
        String value = reader.getAttributeValue(null, name);
        return value == null ? "" : value;
    }

    private long whole(String name) throws OsmFault {
        String text = attribute(name);
        try {
            return Long.parseLong(text);
        } catch (NumberFormatException e) {
            throw noNumber(name, text, e);
        }
    }

    private long e7(String name) throws OsmFault {
        String text = attribute(name);
        try {
            double degrees = text.length() > LONGEST_NUMBER ? Double.NaN : Double.parseDouble(text);
            if (!(Math.abs(degrees) <= 180)) {
                throw OsmFault.unreadable(name + " is no number of degrees", text, "");
            }
            return Math.round(degrees * E7_PER_DEG);
        } catch (NumberFormatException e) {
            throw noNumber(name, text, e);
        }
    }

    private static OsmFault noNumber(String name, String text, NumberFormatException cause) {
        OsmFault fault = OsmFault.unreadable(name + " is no number", text, "");
        fault.initCause(cause);
        return fault;
    }
}
