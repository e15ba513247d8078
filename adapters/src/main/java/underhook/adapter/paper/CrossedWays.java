package underhook.adapter.paper;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import underhook.adapter.paper.Sheet.Dot;

/**
 * What the legs cross on a map too full for names: numbers where they cross it, from north to south, and a
 * list of what each stands for. Crossings close together on the page share a number.
 */
final class CrossedWays {
    /** Closer than this two numbers would crowd each other. */
    private static final double APART = 18;

    private static final Face NUMBER = new Face(true, 8.5);
    private static final int COLUMNS = 2;
    private static final double NUMBER_WIDTH = 20;
    private static final double ROW = 10.5;

    /** Where a leg crosses something on the page. */
    record At(Dot dot, String id, String words) {}

    /** A number and what is crossed there: words by id. */
    record Spot(int number, Dot dot, Map<String, String> crossed) {}

    private final List<Spot> spots;

    private CrossedWays(List<Spot> spots) {
        this.spots = List.copyOf(spots);
    }

    static CrossedWays of(List<At> crossings) {
        List<At> sorted = new ArrayList<>(crossings);
        sorted.sort(
                Comparator.comparingLong((At one) -> Math.round(one.dot().y()))
                        .thenComparingLong(one -> Math.round(one.dot().x()))
                        .thenComparing(At::id));
        List<Spot> spots = new ArrayList<>();
        for (At one : sorted) {
            Spot spot =
                    spots.stream()
                            .filter(other -> isNear(other.dot(), one.dot()))
                            .findFirst()
                            .orElseGet(
                                    () -> new Spot(spots.size() + 1, one.dot(), new TreeMap<>()));
            if (spot.number() > spots.size()) {
                spots.add(spot);
            }
            spot.crossed()
                    .merge(
                            one.id(),
                            one.words(),
                            (said, more) -> said.contains(more) ? said : said + "; " + more);
        }
        return new CrossedWays(spots);
    }

    private static boolean isNear(Dot a, Dot b) {
        return Math.hypot(a.x() - b.x(), a.y() - b.y()) < APART;
    }

    List<Spot> spots() {
        return spots;
    }

    void drawOn(MapInk ink) {
        spots.forEach(spot -> ink.number(spot.dot(), spot.number()));
    }

    /** The list, on as many pages as it takes; none where nothing has a number. */
    void list(Book book) throws IOException {
        List<Map.Entry<String, String>> rows = rows();
        int next = 0;
        while (next < rows.size()) {
            Sheet sheet = book.newPage(PDRectangle.A4, "Map: crossed at the numbers");
            int deep = (int) ((sheet.bottom() - sheet.top()) / ROW);
            double wide = (sheet.right() - sheet.left()) / COLUMNS;
            for (int i = 0; i < COLUMNS * deep && next < rows.size(); i++) {
                Map.Entry<String, String> row = rows.get(next++);
                int column = i / deep;
                double x = sheet.left() + column * wide;
                double y = sheet.top() + (i % deep + 1) * ROW;
                sheet.text(x, y, NUMBER, row.getKey());
                sheet.text(x + NUMBER_WIDTH, y, Face.SMALL, row.getValue());
            }
        }
    }

    /** Number and words; only the first of a spot shows its number. */
    private List<Map.Entry<String, String>> rows() {
        List<Map.Entry<String, String>> rows = new ArrayList<>();
        for (Spot spot : spots) {
            String number = Integer.toString(spot.number());
            for (Map.Entry<String, String> one : spot.crossed().entrySet()) {
                rows.add(Map.entry(number, one.getKey() + " " + one.getValue()));
                number = "";
            }
        }
        return rows;
    }
}
