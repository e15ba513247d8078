package underhook.assembly;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import underhook.adapter.crs.Proj4jReferenceSystems;
import underhook.adapter.demo.DemoDay;
import underhook.adapter.geofile.GeoPackageReader;
import underhook.adapter.geofile.GpxReader;
import underhook.adapter.geofile.GpxTrack;
import underhook.adapter.geofile.KmlReader;
import underhook.adapter.geofile.aixm.AixmReader;
import underhook.adapter.geopackage.GeoPackageWriter;
import underhook.adapter.geopackage.HandoverGeoPackage;
import underhook.adapter.job.JobFolderReader;
import underhook.adapter.job.evening.EveningTables;
import underhook.adapter.job.evening.TrackTable;
import underhook.adapter.job.text.PlainTables;
import underhook.adapter.mapfile.GeoJsonWriter;
import underhook.adapter.mapfile.GpxWriter;
import underhook.adapter.mapfile.KmlWriter;
import underhook.adapter.osm.OsmMapReader;
import underhook.adapter.paper.CardsPdf;
import underhook.adapter.paper.EveningPdf;
import underhook.adapter.planfile.PlanJsonReader;
import underhook.adapter.planfile.PlanJsonWriter;
import underhook.adapter.store.SqliteJobStore;
import underhook.adapter.table.EveningSheets;
import underhook.adapter.table.FindingsCsvWriter;
import underhook.adapter.table.LoadsCsvWriter;
import underhook.adapter.terrain.RasterFiles;
import underhook.app.FolderPublishing;
import underhook.app.MapChanges;
import underhook.app.PlanDay;
import underhook.app.RoomAtPlaces;
import underhook.app.VerifyPlan;
import underhook.app.calc.Calc;
import underhook.app.desk.Desk;
import underhook.app.desk.DeskTools;
import underhook.app.desk.PlanRuns;
import underhook.app.evening.CloseDay;
import underhook.app.evening.QuoteJob;
import underhook.app.port.Archive;
import underhook.app.port.JobReader;
import underhook.app.port.MapReader;
import underhook.app.port.OutputWriter;
import underhook.app.port.PlanReader;
import underhook.app.port.ReferenceSystems;
import underhook.app.replan.ReplanDay;
import underhook.core.crew.Daylight;
import underhook.planner.verify.PlanVerifier;

/** The whole program, put together once. */
public final class Underhook {
    /** Every file of a plan but the findings. */
    private static final List<OutputWriter> WRITERS =
            List.of(
                    new PlanJsonWriter(),
                    new GeoJsonWriter(),
                    new GpxWriter(),
                    new KmlWriter(),
                    new GeoPackageWriter(),
                    new CardsPdf(),
                    new LoadsCsvWriter());

    /** Maps whose words have a public meaning. */
    private static final List<MapReader> MAP_READERS =
            List.of(new OsmMapReader(), new AixmReader());

    private final JobReader jobReader;
    private final MapChanges mapChanges;
    private final PlanDay planDay;
    private final VerifyPlan verifyPlan;
    private final CloseDay closeDay;
    private final ReplanDay replanDay;
    private final Calc calc;
    private final Settings settings;
    private final DeskTools deskTools;
    private final ShiftedClock clock;

    /** Puts it together; reads and writes nothing yet. */
    public Underhook(Settings settings) {
        clock = new ShiftedClock(settings.clock());
        ReferenceSystems systems = new Proj4jReferenceSystems();
        PlanVerifier verifier = new PlanVerifier();
        PlanDay.Checking checking = (job, plan) -> verifier.check(job.job(), job.ground(), plan);
        JobFolderReader folders =
                new JobFolderReader(
                        systems,
                        new JobFolderReader.Readers(
                                new RasterFiles(systems),
                                List.of(
                                        new GeoPackageReader(systems),
                                        new KmlReader(),
                                        new GpxReader()),
                                MAP_READERS),
                        (place, date, zone) ->
                                Daylight.find(place, date.atStartOfDay(zone).toInstant())
                                        .isPresent());
        jobReader = folders;
        mapChanges = new MapChanges(folders);
        planDay =
                new PlanDay(
                        jobReader,
                        new Planning(settings.program(), clock),
                        checking,
                        new FolderPublishing(WRITERS, new FindingsCsvWriter(), clock));
        replanDay =
                new ReplanDay(
                        new ReplanDay.Readers(jobReader, new PlanJsonReader(), new EveningTables()),
                        checking,
                        new FolderPublishing(WRITERS, new FindingsCsvWriter(), clock));
        verifyPlan = new VerifyPlan(jobReader, new PlanJsonReader(), checking);
        closeDay =
                new CloseDay(
                        new CloseDay.Readers(
                                jobReader,
                                new PlanJsonReader(),
                                new EveningTables(),
                                List.of(new GpxTrack(), new TrackTable())),
                        Stream.concat(
                                        EveningSheets.writers().stream(),
                                        Stream.of(new EveningPdf(), new HandoverGeoPackage()))
                                .toList(),
                        clock);
        calc = new Calc(systems, Reports::decode);
        this.settings = settings;
        deskTools =
                new DeskTools(
                        jobReader,
                        folders,
                        new PlanJsonReader(),
                        new PlainTables(),
                        planDay,
                        folder -> new DemoDay().write(folder),
                        clock,
                        new EveningTables(),
                        new EveningPdf());
    }

    /** Sets the program's clock to a day that is to be rehearsed. */
    public void rehearse(Instant at) {
        clock.setTo(at);
    }

    private SqliteJobStore store() {
        return new SqliteJobStore(
                settings.dataFolder().resolve("jobs"), System.getProperty("user.name", ""));
    }

    /** Reads what was ever changed in a kept job. */
    public Archive.Reader archives() {
        return store();
    }

    /** Everything that is kept in the data folder. */
    public Desk desk() {
        return new Desk(store(), settings.dataFolder().resolve("work"), deskTools);
    }

    /** Plans what is kept, in the background. */
    public PlanRuns planRuns() {
        return new PlanRuns(settings.dataFolder().resolve("work"));
    }

    public JobReader jobReader() {
        return jobReader;
    }

    public PlanReader planReader() {
        return new PlanJsonReader();
    }

    public PlanDay planDay() {
        return planDay;
    }

    public VerifyPlan verifyPlan() {
        return verifyPlan;
    }

    public QuoteJob quoteJob() {
        return new QuoteJob(jobReader, new PlanJsonReader(), new EveningTables());
    }

    public ReplanDay replanDay() {
        return replanDay;
    }

    public CloseDay closeDay() {
        return closeDay;
    }

    public MapChanges mapChanges() {
        return mapChanges;
    }

    /**
     * Writes the invented demo day as a job folder.
     *
     * @throws IOException if a file cannot be written
     */
    public void writeDemo(Path folder) throws IOException {
        new DemoDay().write(folder);
    }

    public RoomAtPlaces roomAtPlaces() {
        return new RoomAtPlaces(jobReader);
    }

    public Calc calc() {
        return calc;
    }
}
