package underhook.adapter.crs;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * One {@code KEYWORD[…]} of a WKT text.
 *
 * @param keyword in capitals
 * @param texts quoted texts and bare words, in order
 * @param numbers numbers, in order
 * @param children nodes, in order
 * @source OGC-01-009 section 7; OGC-18-010 section 6
 */
record WktNode(String keyword, List<String> texts, List<Double> numbers, List<WktNode> children) {
    private static final int DEEPEST = 24;

    WktNode {
        texts = List.copyOf(texts);
        numbers = List.copyOf(numbers);
        children = List.copyOf(children);
    }

    static WktNode parse(String text) throws WktFault {
        Scanner scanner = new Scanner(text);
        WktNode node = scanner.node(0);
        scanner.end();
        return node;
    }

    Optional<WktNode> find(String... keywords) {
        List<String> wanted = List.of(keywords);
        return children.stream().filter(c -> wanted.contains(c.keyword)).findFirst();
    }

    WktNode get(String... keywords) throws WktFault {
        Optional<WktNode> found = find(keywords);
        if (found.isEmpty()) {
            throw new WktFault(keyword + " lacks " + String.join(" or ", keywords) + ".");
        }
        return found.get();
    }

    List<WktNode> list(String wanted) {
        return children.stream().filter(c -> c.keyword.equals(wanted)).toList();
    }

    String text() throws WktFault {
        if (texts.isEmpty()) {
            throw new WktFault(keyword + " lacks its name.");
        }
        return texts.get(0);
    }

    double number(int index) throws WktFault {
        if (index >= numbers.size()) {
            throw new WktFault(keyword + " lacks a number.");
        }
        return numbers.get(index);
    }

    /** The EPSG code that stands in the node itself. */
    Optional<String> epsgCode() {
        return find("AUTHORITY", "ID")
                .filter(n -> !n.texts.isEmpty() && n.texts.get(0).equalsIgnoreCase("EPSG"))
                .flatMap(
                        n ->
                                n.texts.size() > 1
                                        ? Optional.of(n.texts.get(1))
                                        : n.numbers.stream()
                                                .findFirst()
                                                .map(d -> Long.toString(Math.round(d))));
    }

    /** Reads once from left to right. */
    private static final class Scanner {
        private final String text;
        private int at;

        Scanner(String text) {
            this.text = text;
        }

        WktNode node(int depth) throws WktFault {
            if (depth > DEEPEST) {
                throw new WktFault("its brackets are more than " + DEEPEST + " deep.");
            }
            String keyword = word().toUpperCase(Locale.ROOT);
            char open = next();
            if (open != '[' && open != '(') {
                throw new WktFault("\"[\" is missing after " + keyword + ".");
            }
            List<String> texts = new ArrayList<>();
            List<Double> numbers = new ArrayList<>();
            List<WktNode> children = new ArrayList<>();
            char mark = ',';
            while (mark == ',') {
                char first = peek();
                if (first == '"') {
                    texts.add(quoted());
                } else if (Character.isLetter(first)) {
                    int start = at;
                    String bare = word();
                    char after = peek();
                    if (after == '[' || after == '(') {
                        at = start;
                        children.add(node(depth + 1));
                    } else {
                        texts.add(bare);
                    }
                } else {
                    numbers.add(number());
                }
                mark = next();
            }
            if (mark != (open == '[' ? ']' : ')')) {
                throw new WktFault("\"" + mark + "\" stands inside " + keyword + ".");
            }
            return new WktNode(keyword, texts, numbers, children);
        }

        void end() throws WktFault {
            skip();
            if (at < text.length()) {
                throw new WktFault("text follows its end.");
            }
        }

        private void skip() {
            while (at < text.length() && Character.isWhitespace(text.charAt(at))) {
                at++;
            }
        }

        private char peek() throws WktFault {
            skip();
            if (at >= text.length()) {
                throw new WktFault("it is neither a code nor whole WKT text.");
            }
            return text.charAt(at);
        }

        private char next() throws WktFault {
            char c = peek();
            at++;
            return c;
        }

        private String word() throws WktFault {
            peek();
            int start = at;
            while (at < text.length()
                    && (Character.isLetterOrDigit(text.charAt(at)) || text.charAt(at) == '_')) {
                at++;
            }
            if (at == start) {
                throw new WktFault("it is neither a code nor WKT text.");
            }
            return text.substring(start, at);
        }

        private String quoted() throws WktFault {
            StringBuilder out = new StringBuilder();
            at++;
            while (at < text.length()) {
                char c = text.charAt(at++);
                if (c != '"') {
                    out.append(c);
                } else if (at < text.length() && text.charAt(at) == '"') {
                    out.append('"');
                    at++;
                } else {
                    return out.toString();
                }
            }
            throw new WktFault("a quotation mark is missing.");
        }

        private double number() throws WktFault {
            int start = at;
            while (at < text.length() && "+-.0123456789eE".indexOf(text.charAt(at)) >= 0) {
                at++;
            }
            String digits = text.substring(start, at);
            try {
                double value = Double.parseDouble(digits);
                if (Double.isFinite(value)) {
                    return value;
                }
            } catch (NumberFormatException e) {
                // Said below, with the text.
            }
            throw new WktFault("\"" + digits + "\" is not a number.");
        }
    }
}
