package underhook.adapter.paper;

import java.io.IOException;
import java.time.LocalDate;
import java.util.List;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import underhook.app.port.OutputWriter.Output;
import underhook.core.plan.KitItem;

/** The gear of the day to be laid out and ticked off, with when each piece is due. */
final class KitPage {
    private final Output output;

    KitPage(Output output) {
        this.output = output;
    }

    /** Nothing for a job that lists no gear. */
    void draw(Book book) throws IOException {
        List<KitItem> kit = output.plan().kit();
        if (kit.isEmpty()) {
            return;
        }
        Flow flow = new Flow(book, PDRectangle.A4, "Kit list");
        flow.paragraph(
                Face.TEXT,
                "Lay out and look over before the first lift: tag, date, wear. What is due or has no"
                        + " tag stays behind; SOON is due within "
                        + KitItem.SOON_DAYS
                        + " days. \"All day\": when none comes back in between.");
        flow.space(4);
        flow.table(
                List.of(
                        Flow.Column.of("tick", 27),
                        Flow.Column.strong("item", 140),
                        Flow.Column.of("in stock", 48),
                        Flow.Column.strong("all day", 48),
                        Flow.Column.of("one lift", 48),
                        Flow.Column.strong("due", 90),
                        Flow.Column.of("for", 126)));
        for (KitItem item : kit) {
            flow.row(
                    List.of(
                            "[]",
                            item.name(),
                            Integer.toString(item.count()),
                            Integer.toString(item.forDay())
                                    + (item.forDay() > item.count() ? " SHORT" : ""),
                            Integer.toString(item.atOnce()),
                            item.dueOn().map(LocalDate::toString).orElse("NO DATE")
                                    + (item.isDueSoon(output.readJob().job().date())
                                            ? " SOON"
                                            : ""),
                            String.join(", ", item.uses())));
        }
    }
}
