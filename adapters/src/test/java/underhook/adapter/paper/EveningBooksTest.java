package underhook.adapter.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import underhook.app.port.ClosedDay;
import underhook.app.port.OutputWriter.Output;
import underhook.core.billing.Invoice;
import underhook.core.billing.Tariff;
import underhook.core.flown.CycleRule;
import underhook.core.flown.FlownDay;
import underhook.core.flown.MachineSums;
import underhook.core.flown.PartLife;
import underhook.core.flown.TrainedHands;
import underhook.core.job.Load;

/** Every figure by hand from what is put in; no source outside. */
class EveningBooksTest {
    private static final Instant SEVEN = Instant.parse("2026-09-08T07:00:00Z");

    /** 102 min 11 s of flying, 125 min with the engine on, 13 lifts, 12 take-offs and landings. */
    private static final MachineSums SUMS = new MachineSums(7500, 6131, 12, 12, 12, 13, 0);

    private static ClosedDay.LiftLine line(Load load, int minute, int seconds) {
        Optional<Instant> hooked = Optional.of(SEVEN.plusSeconds(60L * minute));
        return new ClosedDay.LiftLine(
                load.id(),
                load.kind(),
                load.from(),
                load.to(),
                OptionalDouble.of(25),
                hooked,
                hooked,
                ClosedDay.Told.TAPPED,
                false,
                hooked,
                hooked.filter(at -> seconds > 0).map(at -> at.plusSeconds(seconds)),
                load.massKg(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                List.of());
    }

    private static ClosedDay day(Optional<Invoice> invoice) {
        Output planned = PaperDay.output();
        FlownDay nothing = FlownDay.of(List.of(), TrainedHands.UNNAMED);
        FlownDay flown = new FlownDay(List.of(), List.of(), SUMS, nothing.now(), List.of());
        List<Load> loads = planned.readJob().job().loads();
        Load bag = loads.stream().filter(one -> one.kind().equals("bag")).findFirst().orElseThrow();
        Load pole =
                loads.stream()
                        .filter(one -> one.kind().equals("pole") && one.to().equals(bag.to()))
                        .findFirst()
                        .orElseThrow();
        PartLife mast =
                new PartLife(
                        "mast",
                        CycleRule.EVERY_LIFT,
                        1000,
                        36000,
                        OptionalInt.of(1050),
                        OptionalDouble.empty(),
                        Optional.empty());
        return new ClosedDay(
                planned.readJob(),
                planned.plan(),
                flown,
                List.of(line(bag, 5, 250), line(pole, 20, 601), line(loads.get(3), 40, 0)),
                List.of(
                        new ClosedDay.PartLine(
                                mast, mast.after(SUMS, 3, planned.readJob().job().date()))),
                invoice,
                Map.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of());
    }

    private static String text(ClosedDay day, String name) throws IOException {
        Path file = Files.createDirectories(Path.of("target", "paper-test")).resolve(name);
        new EveningPdf().write(day, file);
        try (PDDocument document = Loader.loadPDF(file.toFile())) {
            PDFTextStripper stripper = new PDFTextStripper();
            stripper.setSortByPosition(true);
            return stripper.getText(document).replaceAll("\\s+", " ");
        }
    }

    /**
     * 6131 s are 17.03 tenths of an hour: 18 started ones at 210.00 are 3780.00; 2 poles at 90.00 are 180.00; together
     * 3960.00, and 40.00 up to the day's 4000.00. 12 landings and 13 lifts are 25 cycles: 1025 of 1050 leave 25.
     */
    @Test
    void hours_cycles_and_the_basis_of_the_invoice_stand_on_paper_with_their_rounding()
            throws IOException {
        Tariff tariff =
                new Tariff(
                        "by the tenth",
                        "EUR",
                        400000,
                        List.of(
                                new Tariff.Item(
                                        "flying",
                                        Tariff.Basis.FLYING_TIME,
                                        Tariff.Rounding.STARTED_TENTH_OF_HOUR,
                                        21000),
                                new Tariff.Item(
                                        "poles",
                                        Tariff.Basis.POLES,
                                        Tariff.Rounding.NEAREST_MINUTE,
                                        9000)));
        Invoice invoice = Invoice.of(tariff, new Invoice.Quantities(6131000, 7500000, 0, 13, 2, 0));

        assertThat(text(day(Optional.of(invoice)), "evening.pdf"))
                .contains("Hours, counts and invoice basis")
                .contains("engine on 2:05 h:min", "flying, take-off to landing 1:43 h:min")
                .contains("mast: cycles of the day 25", "mast: cycles left 25")
                .contains("flying 1 h 42 min 11 s 18 started tenth of an hour 210.00 3780.00")
                .contains("poles 2 pole 2 pole 90.00 180.00")
                .contains("up to the day's 1 day 40.00 40.00 minimum")
                .contains("total 4000.00");
    }

    /** 250 s and 601 s are 14 min 11 s: 15 started minutes. */
    @Test
    void each_place_has_its_loads_and_minutes_and_without_a_tariff_nothing_is_charged()
            throws IOException {
        ClosedDay day = day(Optional.empty());

        assertThat(text(day, "evening-without-tariff.pdf"))
                .contains("No tariff was given")
                .containsPattern(day.lifts().get(0).to() + " .*?2 of 2 1 of 1 15")
                .containsPattern(day.lifts().get(2).to() + " .*?0 of 1 0");
    }
}
