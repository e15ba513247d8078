package underhook.app.evening;

import java.io.IOException;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import underhook.app.OutputFolder;
import underhook.app.port.ClosedDay;
import underhook.app.port.EveningFiles;
import underhook.app.port.EveningWriter;
import underhook.app.port.Fault;
import underhook.app.port.FlownSample;
import underhook.app.port.JobReader;
import underhook.app.port.JobReading;
import underhook.app.port.PlanReader;
import underhook.app.port.ReadJob;
import underhook.app.port.Reading;
import underhook.app.port.TrackReader;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Outcome;
import underhook.core.flown.FlownDay;
import underhook.core.flown.TrainedHands;
import underhook.core.job.Job;
import underhook.core.plan.Plan;

/** Closes a day: puts what was tapped and tracked beside the plan, and writes what the evening needs. */
public final class CloseDay {
    /**
     * What is asked for.
     *
     * @param folder job folder
     * @param plan its plan.json
     * @param taps table of taps
     * @param track recorded track
     * @param books hands, tariff and lives
     * @param earlier samples.csv of earlier days to learn from as well
     * @param out output folder
     */
    public record Request(
            Path folder,
            Path plan,
            Optional<Path> taps,
            Optional<Path> track,
            Optional<Path> books,
            List<Path> earlier,
            Path out) {
        public Request {
            earlier = List.copyOf(earlier);
        }
    }

    /**
     * What came of it.
     *
     * @param faults of what was read; when there are any nothing was written
     * @param refusals why the plan could not be read
     * @param day the closed day
     * @param files what was written
     */
    public record Result(
            List<Fault> faults, List<Finding> refusals, Optional<ClosedDay> day, List<Path> files) {
        public Result {
            faults = List.copyOf(faults);
            refusals = List.copyOf(refusals);
            files = List.copyOf(files);
        }
    }

    /** Everything that reads. */
    public record Readers(
            JobReader jobs, PlanReader plans, EveningFiles evening, List<TrackReader> tracks) {
        public Readers {
            tracks = List.copyOf(tracks);
        }
    }

    private final Readers readers;
    private final List<EveningWriter> writers;
    private final InstantSource clock;

    public CloseDay(Readers readers, List<? extends EveningWriter> writers, InstantSource clock) {
        this.readers = readers;
        this.writers = List.copyOf(writers);
        this.clock = clock;
    }

    /**
     * Closes the day.
     *
     * @throws IOException when the output folder cannot be written; nothing half-written stays
     */
    public Result close(Request request) throws IOException {
        JobReading reading = readers.jobs().read(request.folder());
        if (reading.job().isEmpty()) {
            return new Result(reading.faults(), List.of(), Optional.empty(), List.of());
        }
        Job job = reading.job().get().job();
        Outcome<Plan> plan = readers.plans().read(request.plan());
        if (!plan.isDone()) {
            return new Result(List.of(), plan.findings(), Optional.empty(), List.of());
        }
        Inputs inputs = new Inputs();
        EveningFiles.Tapped taps =
                request.taps()
                        .map(file -> readers.evening().readTaps(file, job, Optional.empty()))
                        .map(read -> inputs.take(read, EveningFiles.Tapped.NONE))
                        .orElse(EveningFiles.Tapped.NONE);
        EveningFiles.Books books =
                request.books()
                        .map(file -> readers.evening().readBooks(file))
                        .map(read -> inputs.take(read, EveningFiles.Books.NONE))
                        .orElse(EveningFiles.Books.NONE);
        List<TrackReader.Fix> track =
                request.track()
                        .map(file -> inputs.take(readTrack(file), List.<TrackReader.Fix>of()))
                        .orElse(List.of());
        List<FlownSample> earlier = new ArrayList<>();
        for (Path file : request.earlier()) {
            earlier.addAll(
                    inputs.take(readers.evening().readSamples(file), List.<FlownSample>of()));
        }
        if (!inputs.faults.isEmpty()) {
            return new Result(inputs.faults, List.of(), Optional.empty(), List.of());
        }
        ClosedDay day =
                new Evening(reading.job().get(), plan.getValue())
                        .close(
                                new Evening.Facts(
                                        FlownDay.ofRows(
                                                taps.taps(),
                                                books.hands().withPeopleOf(job.crews())),
                                        taps.taps(),
                                        ClocksOff.findings(taps),
                                        track,
                                        books,
                                        earlier,
                                        readers.plans().findSums(request.plan())));
        return new Result(List.of(), List.of(), Optional.of(day), write(day, request.out()));
    }

    /** A day that is still being flown, or has just ended, beside its plan; nothing is written. */
    public static ClosedDay beside(
            ReadJob job, Plan plan, EveningFiles.Tapped taps, TrainedHands hands) {
        EveningFiles.Books none = EveningFiles.Books.NONE;
        EveningFiles.Books books =
                new EveningFiles.Books(hands, none.tariff(), none.parts(), none.offer());
        return new Evening(job, plan)
                .close(
                        new Evening.Facts(
                                FlownDay.of(taps.taps(), hands),
                                taps.taps(),
                                ClocksOff.findings(taps),
                                List.of(),
                                books,
                                List.of(),
                                Map.of()));
    }

    /** Reads on after a fault, so that all are told at once. */
    private static final class Inputs {
        private final List<Fault> faults = new ArrayList<>();

        <T> T take(Reading<T> reading, T otherwise) {
            faults.addAll(reading.faults());
            return reading.value().orElse(otherwise);
        }
    }

    private Reading<List<TrackReader.Fix>> readTrack(Path file) {
        String name = String.valueOf(file.getFileName());
        return readers.tracks().stream()
                .filter(reader -> reader.reads(name))
                .findFirst()
                .map(reader -> reader.read(file, name))
                .orElseGet(
                        () ->
                                new Reading<>(
                                        Optional.empty(),
                                        List.of(
                                                new Fault(
                                                        FindingCode.FILE_UNREADABLE,
                                                        name,
                                                        0,
                                                        "",
                                                        "has an unknown ending",
                                                        name,
                                                        ".gpx or .csv"))));
    }

    private List<Path> write(ClosedDay day, Path out) throws IOException {
        return OutputFolder.write(
                out,
                writers.stream()
                        .map(
                                writer ->
                                        new OutputFolder.Part(
                                                writer.fileName(), file -> writer.write(day, file)))
                        .toList(),
                clock);
    }
}
