package underhook.web;

import java.util.List;

/** Writes HTML; whatever text comes in is escaped. */
final class Html {
    private final StringBuilder text = new StringBuilder();

    /** Markup of our own; never hand in anything from a job. */
    Html raw(String markup) {
        text.append(markup);
        return this;
    }

    Html text(String content) {
        text.append(escape(content));
        return this;
    }

    Html element(String name, String content) {
        return raw("<" + name + ">").text(content).raw("</" + name + ">");
    }

    Html link(String address, String content) {
        return raw("<a href=\"").text(address).raw("\">").text(content).raw("</a>");
    }

    Html head(List<String> columns) {
        raw("<thead><tr>");
        columns.forEach(column -> raw("<th scope=\"col\">").text(column).raw("</th>"));
        return raw("</tr></thead>\n");
    }

    Html row(List<String> cells) {
        raw("<tr>");
        cells.forEach(cell -> element("td", cell));
        return raw("</tr>\n");
    }

    static String escape(String content) {
        StringBuilder escaped = new StringBuilder(content.length() + 16);
        for (int i = 0; i < content.length(); i++) {
            char c = content.charAt(i);
            switch (c) {
                case '&' -> escaped.append("&amp;");
                case '<' -> escaped.append("&lt;");
                case '>' -> escaped.append("&gt;");
                case '"' -> escaped.append("&quot;");
                case '\'' -> escaped.append("&#39;");
                default -> escaped.append(c);
            }
        }
        return escaped.toString();
    }

    @Override
    public String toString() {
        return text.toString();
    }
}
