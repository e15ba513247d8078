package underhook.adapter.paper;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import underhook.app.port.OutputWriter;
import underhook.core.ahead.Alternates;
import underhook.core.ahead.Alternates.Alternate;
import underhook.core.job.Crew;
import underhook.core.job.Language;
import underhook.core.job.PlaceId;

/**
 * Writes cards.pdf: pilot page and cards (A5), their annex, loader's lists, kit list, crew sheets, briefing, guards,
 * emergency, map, what is said beside the plan, findings and hand signals (A4). A plan without steps or crews still gives map, findings and signals.
 */
public final class CardsPdf implements OutputWriter {
    @Override
    public String fileName() {
        return "cards.pdf";
    }

    /**
     * Writes the whole file.
     *
     * @throws IOException if the file cannot be written
     */
    @Override
    public void write(Output output, Path file) throws IOException {
        Words words = new Words(output.readJob().job(), output.readJob().ground());
        try (Book book = new Book(output.readJob().job(), output.plan(), words)) {
            Map<PlaceId, List<Alternate>> alternates =
                    Alternates.of(output.readJob().job(), output.readJob().ground(), output.plan());
            // Everybody's pages in English, and in each other language that a crew has.
            List<Tongue> tongues =
                    output.readJob().job().crews().stream()
                            .map(Crew::language)
                            .filter(language -> language != Language.EN)
                            .distinct()
                            .sorted()
                            .map(Tongue::of)
                            .toList();
            new PilotPage(output, words, alternates).draw(book);
            new PilotCards(output, words).draw(book);
            new PilotAnnex(output, words, alternates).draw(book);
            new LoaderLists(output, words).draw(book);
            new KitPage(output).draw(book);
            new CrewSheets(output, words).draw(book);
            new BriefingPages(output).draw(book, Tongue.ENGLISH);
            for (Tongue tongue : tongues) {
                new BriefingPages(output).draw(book, tongue);
            }
            new GuardLists(output, words).draw(book);
            new EmergencyPages(output, words).draw(book, Tongue.ENGLISH);
            for (Tongue tongue : tongues) {
                new EmergencyPages(output, words).draw(book, tongue);
            }
            new MapPage(output, words).draw(book);
            new AheadPages(output).draw(book);
            new FindingPages(output).draw(book);
            SignalPage.draw(book, Tongue.ENGLISH);
            for (Tongue tongue : tongues) {
                SignalPage.draw(book, tongue);
            }
            book.write(file);
        }
    }
}
