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
            assertThat(document.getNumberOfPages()).isEqualTo(2);
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
