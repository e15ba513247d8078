package underhook.adapter.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.app.port.OutputWriter.Output;
import underhook.core.job.LoadId;
import underhook.core.plan.Leg;
import underhook.core.plan.PathPoint;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;

/** Whoever flies the bearing of a place where the way is not straight is over what the way goes round. */
class BentWaysTest {
    private static final Output DAY = PaperDay.output();
    private static final Words WORDS = new Words(DAY.readJob().job(), DAY.readJob().ground());

    @TempDir Path folder;

    private static Leg leg(Leg like, double... eastNorthM) {
        List<PathPoint> path = new ArrayList<>();
        for (int i = 0; i < eastNorthM.length; i += 2) {
            path.add(new PathPoint(PaperDay.geo(eastNorthM[i], eastNorthM[i + 1]), 600));
        }
        return new Leg(
                like.carrying(),
                like.from(),
                like.to(),
                path,
                like.distanceM(),
                like.durationS(),
                like.boundS(),
                like.leastClearanceM(),
                like.speedMPerS(),
                List.of(),
                like.wires(),
                Leg.Looks.NONE);
    }

    private static Leg planned() {
        return PaperDay.staying().get(0).rotation().orElseThrow().legs().get(0);
    }

    /**
     * 2 km north, then 2 km east, with a turn of 200 m to the south at the start and one of 300 m beyond the end, as
     * of the ways out and in. 45 m off is within the strip of 60 m. Variation 3° E takes 3° off.
     */
    private static Leg roundTheCorner() {
        return leg(
                planned(), 0, 0, 0, -200, 100, -200, 0, 400, 45, 1200, 0, 2000, 1600, 2000, 2300,
                2000, 2000, 2000);
    }

    @Test
    void a_bent_way_is_told_in_courses() {
        assertThat(WORDS.courses(roundTheCorner(), false).orElseThrow())
                .endsWith("NOT STRAIGHT: 360° 2.0, 090° 2.0 km TRUE.");
        assertThat(WORDS.courses(roundTheCorner(), true).orElseThrow())
                .startsWith(planned().from() + " → " + planned().to())
                .endsWith("NOT STRAIGHT: 357° 2.0, 087° 2.0 km.");
    }

    @Test
    void turns_at_the_ends_and_what_stays_in_the_strip_bend_no_way() {
        Leg straight =
                leg(planned(), 0, 0, -200, 100, 100, 200, 1000, 59, 2300, -100, 2200, 100, 2000, 0);

        assertThat(WORDS.courses(straight, true)).isEmpty();
        assertThat(WORDS.courses(leg(planned(), 0, 0, 1000, 61, 2000, 0), true)).isPresent();
    }

    @Test
    void pilot_page_card_and_annex_tell_it() throws IOException {
        Step step = PaperDay.staying().get(0);
        Rotation lift = step.rotation().orElseThrow();
        List<LoadId> loads = lift.loads();
        Rotation bent =
                new Rotation(
                        loads,
                        lift.hookedAt(),
                        lift.fuelAtHookKg(),
                        lift.massOnHookKg(),
                        lift.hogeMassKg(),
                        lift.fuelMaxKg(),
                        lift.ballastKg(),
                        lift.drops(),
                        List.of(roundTheCorner()),
                        lift.limits());
        Step with =
                new Step(
                        step.kind(),
                        step.from(),
                        step.to(),
                        step.startAt(),
                        step.endAt(),
                        step.fuelStartKg(),
                        step.fuelEndKg(),
                        step.lineLengthM(),
                        step.engineRunning(),
                        Optional.of(bent),
                        step.crew(),
                        step.legs(),
                        step.because());
        Path file = folder.resolve("cards.pdf");

        new CardsPdf().write(PaperDay.without(List.of(with)), file);

        try (PDDocument document = Loader.loadPDF(file.toFile())) {
            String text = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
            assertThat(text)
                    .containsPattern("\\d\\d:\\d\\d \\w+\\. BENT\\.")
                    .contains("NOT STRAIGHT: 357° 2.0, 087° 2.0 km.")
                    .contains("360° 2.0, 090° 2.0 km TRUE.");
        }
    }
}
