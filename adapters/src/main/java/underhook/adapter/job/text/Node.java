package underhook.adapter.job.text;

import java.util.List;

/** A piece of a YAML or JSON file, with the line it starts on. */
public sealed interface Node {
    int line();

    /** What it is, in words for a fault. */
    String kind();

    /** A single value; blank when it says nothing. */
    record Scalar(int line, String text) implements Node {
        @Override
        public String kind() {
            return "a single value";
        }
    }

    /** A list. */
    record Items(int line, List<Node> nodes) implements Node {
        @Override
        public String kind() {
            return "a list";
        }
    }

    /** Named values in the order of the file, duplicates still in it. */
    record Mapping(int line, List<Entry> entries) implements Node {
        @Override
        public String kind() {
            return "a mapping";
        }
    }

    /** One named value of a mapping. */
    record Entry(int line, String name, Node value) {}
}
