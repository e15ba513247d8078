package underhook.adapter.job.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.events.CollectionEndEvent;
import org.snakeyaml.engine.v2.events.CollectionStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;
import underhook.adapter.job.text.NumberText.Decimal;
import underhook.adapter.job.text.Source.At;
import underhook.adapter.job.text.Source.Found;
import underhook.core.finding.FindingCode;

/** Reads YAML as it is written: plain trees, every scalar as its text. */
public final class Yaml {
    private static final int DEEPEST = 20;

    private Yaml() {}

    /** The fields of the file's one mapping; empty, with a fault, when it is none. */
    public static Optional<Fields> read(String text, Source source) {
        LoadSettings settings =
                LoadSettings.builder()
                        .setCodePointLimit(Integer.MAX_VALUE)
                        // All at once: the reader fails on a sign of two parts that lies over the
                        // end of its buffer.
                        .setBufferSize(text.length() + 2)
                        .build();
        try {
            if (!isPlainTree(new Parse(settings).parseString(text), source)) {
                return Optional.empty();
            }
            Optional<Node> root = new Compose(settings).composeString(text).map(Yaml::toNode);
            if (root.isPresent() && root.get() instanceof Node.Mapping mapping) {
                return Optional.of(new Fields(context(source), mapping));
            }
            source.fault(
                    FindingCode.FILE_UNREADABLE,
                    new At(root.isEmpty() ? 0 : root.get().line(), ""),
                    root.isEmpty() ? "is empty" : "holds " + root.get().kind(),
                    Found.allowing("fields such as \"version: 1\""));
        } catch (MarkedYamlEngineException wrong) {
            int line = wrong.getProblemMark().map(mark -> mark.getLine() + 1).orElse(0);
            refuse(source, line, String.valueOf(wrong.getProblem()));
        } catch (YamlEngineException wrong) {
            refuse(source, 0, String.valueOf(wrong.getMessage()));
        }
        return Optional.empty();
    }

    private static Fields.Context context(Source source) {
        return new Fields.Context(source, Style.YAML, Decimal.POINT);
    }

    private static void refuse(Source source, int line, String problem) {
        source.fault(
                FindingCode.FILE_UNREADABLE,
                new At(line, ""),
                "is no YAML: " + problem.lines().findFirst().orElse(""),
                Found.NOTHING);
    }

    /** Looks at the stream of events, which needs no recursion, before a tree is made of it. */
    private static boolean isPlainTree(Iterable<Event> events, Source source) {
        int depth = 0;
        for (Event event : events) {
            int line = event.getStartMark().map(mark -> mark.getLine() + 1).orElse(0);
            if (event.getEventId() == Event.ID.Alias) {
                source.fault(
                        FindingCode.FILE_UNREADABLE,
                        new At(line, ""),
                        "refers to another part of the file",
                        Found.allowing("values written out"));
                return false;
            }
            if (event instanceof CollectionStartEvent && ++depth > DEEPEST) {
                source.fault(
                        FindingCode.FILE_UNREADABLE,
                        new At(line, ""),
                        "is nested too deep",
                        Found.allowing("at most " + DEEPEST + " levels"));
                return false;
            }
            if (event instanceof CollectionEndEvent) {
                depth--;
            }
        }
        return true;
    }

    private static Node toNode(org.snakeyaml.engine.v2.nodes.Node node) {
        int line = node.getStartMark().map(mark -> mark.getLine() + 1).orElse(0);
        if (node instanceof MappingNode mapping) {
            List<Node.Entry> entries = new ArrayList<>();
            for (NodeTuple tuple : mapping.getValue()) {
                Node key = toNode(tuple.getKeyNode());
                String name = key instanceof Node.Scalar scalar ? scalar.text() : key.kind();
                entries.add(new Node.Entry(key.line(), name, toNode(tuple.getValueNode())));
            }
            return new Node.Mapping(line, entries);
        }
        if (node instanceof SequenceNode sequence) {
            return new Node.Items(line, sequence.getValue().stream().map(Yaml::toNode).toList());
        }
        String text = node instanceof ScalarNode scalar ? scalar.getValue() : "";
        return new Node.Scalar(line, isNull(text) ? "" : text);
    }

    private static boolean isNull(String text) {
        return text.equals("~") || text.equals("null");
    }
}
