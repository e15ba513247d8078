package underhook.adapter.paper;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.GregorianCalendar;
import java.util.List;
import java.util.Map;
import java.util.zip.CRC32;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import underhook.app.port.Caution;
import underhook.core.job.Job;
import underhook.core.plan.Plan;

/** All pages of one plan, each with the same head and foot. */
final class Book implements AutoCloseable {
    private static final Face FOOT = new Face(false, 8);

    private final PDDocument document = new PDDocument();
    private final Fonts fonts;
    private final List<Sheet> sheets = new ArrayList<>();
    private final Job job;
    private final Plan plan;
    private final Words words;

    Book(Job job, Plan plan, Words words) throws IOException {
        this.job = job;
        this.plan = plan;
        this.words = words;
        this.fonts = new Fonts(document);
    }

    /** A page that is as wide and high as the size says. */
    Sheet newPage(PDRectangle size, String title) throws IOException {
        return newPage(size, title, Tongue.ENGLISH);
    }

    /** The same in another tongue, its head and foot too. */
    Sheet newPage(PDRectangle size, String title, Tongue tongue) throws IOException {
        PDPage page = new PDPage(size);
        document.addPage(page);
        Sheet sheet =
                new Sheet(
                        new PDPageContentStream(document, page),
                        fonts,
                        tongue,
                        new Sheet.Dot(size.getWidth(), size.getHeight()));
        sheets.add(sheet);
        head(sheet, title);
        return sheet;
    }

    private void head(Sheet sheet, String title) throws IOException {
        Face big = new Face(true, 13);
        double between = sheet.right() - sheet.left();
        double end =
                sheet.textWithin(
                        new Sheet.Dot(sheet.left(), 30), between * 0.55, big, sheet.say(title));
        String name = job.name() + ", " + job.date();
        double room = sheet.right() - end - 12;
        Face shrunk = fonts.shrunk(Face.TEXT, name, room);
        Face nameFace = shrunk.size() < Face.SMALL.size() ? Face.SMALL : shrunk;
        // The date must stay, so a long name is cut before it.
        String date = ", " + job.date();
        String shortName = fonts.cut(nameFace, job.name(), room - fonts.width(nameFace, date));
        sheet.textRight(sheet.right(), 30, nameFace, shortName + date);
        String version =
                "Plan "
                        + plan.id()
                        + ", planned "
                        + words.dateAndClock(plan.plannedAt())
                        + ". All times "
                        + words.zone()
                        + ".";
        sheet.textWithin(
                new Sheet.Dot(sheet.left(), 43),
                between,
                Face.SMALL.withSize(9),
                sheet.say(version));
        sheet.stroke(1.2);
        sheet.line(sheet.left(), 48, sheet.right(), 48);
    }

    private void foot(Sheet sheet, String pageOf) throws IOException {
        double y = sheet.height() - 36;
        sheet.stroke(0.6);
        sheet.line(sheet.left(), y - 6, sheet.right(), y - 6);
        sheet.textRight(sheet.right(), y + 5, Face.STRONG.withSize(9), sheet.say(pageOf));
        double room = sheet.right() - sheet.left() - 75;
        for (String line : fonts.wrap(FOOT, sheet.say(Caution.TEXT), room)) {
            sheet.text(sheet.left(), y + 4, FOOT, line);
            y += 10;
        }
    }

    /** What is not on paper as it was written is told there, on a page of its own. */
    private void tellUnprinted() throws IOException {
        Map<String, String> told = fonts.told();
        if (told.isEmpty()) {
            return;
        }
        Flow flow = new Flow(this, PDRectangle.A4, "Not printed as written");
        flow.paragraph(
                Face.TEXT,
                "The font of these pages lacks some signs that the files have. A sign stands as its name in"
                        + " brackets, a letter of another script as \"?\". Read them in the files.");
        flow.space(8);
        flow.table(List.of(Flow.Column.strong("printed as", 270), Flow.Column.of("for", 257)));
        for (Map.Entry<String, String> one : told.entrySet()) {
            flow.row(List.of(one.getKey(), one.getValue()));
        }
    }

    /** Numbers the pages and writes the file; the same pages give the same bytes. */
    void write(Path file) throws IOException {
        tellUnprinted();
        for (int i = 0; i < sheets.size(); i++) {
            foot(sheets.get(i), "page " + (i + 1) + " of " + sheets.size());
            sheets.get(i).finish();
        }
        CRC32 id = new CRC32();
        id.update(plan.id().getBytes(StandardCharsets.UTF_8));
        document.setDocumentId(id.getValue());
        var about = document.getDocumentInformation();
        about.setTitle(job.name() + ", " + job.date() + ", plan " + plan.id());
        about.setProducer(plan.program());
        GregorianCalendar planned = GregorianCalendar.from(plan.plannedAt().atZone(job.zone()));
        about.setCreationDate(planned);
        about.setModificationDate(planned);
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file))) {
            document.save(out);
        }
    }

    @Override
    public void close() throws IOException {
        fonts.close();
        document.close();
    }
}
