package underhook.adapter.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.app.port.OutputWriter.Output;

class FlowTest {
    @TempDir Path folder;

    @Test
    void a_bar_carries_the_head_of_its_table_over_and_that_of_none_behind_a_gap()
            throws IOException {
        assertThat(pagesWithHead(false)).isEqualTo(2);
        assertThat(pagesWithHead(true)).isEqualTo(1);
    }

    /** A row of ten lines that does not fit below its heading takes heading and head along. */
    @Test
    void no_heading_stands_alone_at_the_foot_of_a_page() throws IOException {
        Output output = PaperDay.output();
        Words words = new Words(output.readJob().job(), output.readJob().ground());
        for (int left = 20; left <= 180; left += 20) {
            Path file = folder.resolve("heading" + left + ".pdf");
            try (Book book = new Book(output.readJob().job(), output.plan(), words)) {
                Flow flow = new Flow(book, PDRectangle.A4, "Flow");
                flow.space(flow.sheet().bottom() - flow.y() - left);
                flow.heading("Heading above");
                flow.table(List.of(Flow.Column.of("headword", 60)));
                flow.row(List.of("firstrow" + " morewords".repeat(9)));
                book.write(file);
            }
            try (PDDocument document = Loader.loadPDF(file.toFile())) {
                PDFTextStripper stripper = new PDFTextStripper();
                // The last page tells of the sign in the job's name.
                stripper.setStartPage(document.getNumberOfPages() - 1);
                assertThat(stripper.getText(document))
                        .as("%d points left", left)
                        .contains("Heading above", "headword", "firstrow", "more");
            }
        }
    }

    /** A table, and a bar that finds no room on its page. */
    private long pagesWithHead(boolean isGapBetween) throws IOException {
        Output output = PaperDay.output();
        Words words = new Words(output.readJob().job(), output.readJob().ground());
        Path file = folder.resolve(isGapBetween + ".pdf");
        try (Book book = new Book(output.readJob().job(), output.plan(), words)) {
            Flow flow = new Flow(book, PDRectangle.A4, "Flow");
            flow.table(List.of(Flow.Column.of("headword", 100)));
            while (flow.y() + 18 <= flow.sheet().bottom()) {
                flow.row(List.of("row"));
            }
            if (isGapBetween) {
                flow.space(4);
            }
            flow.bar("bar");
            book.write(file);
        }
        long found = 0;
        try (PDDocument document = Loader.loadPDF(file.toFile())) {
            // Besides the page that tells of the sign in the job's name.
            assertThat(document.getNumberOfPages()).isEqualTo(2 + 1);
            for (int page = 1; page <= 2; page++) {
                PDFTextStripper stripper = new PDFTextStripper();
                stripper.setStartPage(page);
                stripper.setEndPage(page);
                found += stripper.getText(document).contains("headword") ? 1 : 0;
            }
        }
        return found;
    }
}
