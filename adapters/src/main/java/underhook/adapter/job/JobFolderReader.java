package underhook.adapter.job;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import underhook.adapter.job.Mentions.Family;
import underhook.adapter.job.PlacesFile.PlaceRow;
import underhook.adapter.job.text.Faults;
import underhook.adapter.job.text.Fields;
import underhook.adapter.job.text.Quantity;
import underhook.adapter.job.text.Range;
import underhook.adapter.job.text.Source;
import underhook.adapter.job.text.Source.At;
import underhook.adapter.job.text.Source.Found;
import underhook.adapter.job.text.TextFile;
import underhook.adapter.job.text.Yaml;
import underhook.app.port.EditionReader;
import underhook.app.port.EmergencyPlan;
import underhook.app.port.FeatureReader;
import underhook.app.port.JobInputs;
import underhook.app.port.JobReader;
import underhook.app.port.JobReading;
import underhook.app.port.MapBox;
import underhook.app.port.MapReader;
import underhook.app.port.RasterReader;
import underhook.app.port.ReadJob;
import underhook.app.port.ReferenceSystem;
import underhook.app.port.ReferenceSystems;
import underhook.core.ahead.Beside;
import underhook.core.ahead.Notice;
import underhook.core.ahead.NoticeText;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.Ground;
import underhook.core.geo.HeightField;
import underhook.core.geo.LocalFrame;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Confirmation;
import underhook.core.job.InputFile;
import underhook.core.job.Job;
import underhook.core.job.Load;
import underhook.core.job.Machine;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.job.Rigging;
import underhook.core.job.Rules;
import underhook.core.job.Waiver;
import underhook.core.job.Weather;
import underhook.core.learn.Figure;
import underhook.core.learn.LearnedRules;

/** Reads a job folder, every file of it, and gives the job or all the faults at once. */
public final class JobFolderReader implements JobReader, EditionReader, JobInputs {
    /** The sun goes round in a day. */
    private static final int SECONDS_PER_DEGREE = 240;

    /**
     * A reserve shorter than this is told.
     *
     * @source WAC-296-45 20 min while people ride or work near
     * @source SPO-OP-131 20 min at best-range speed, 10 by day within 25 NM of the start
     */
    private static final Duration USUAL_RESERVE = Duration.ofMinutes(20);

    /**
     * Clocks differ from the sun's by up to three and a half hours.
     *
     * @source common practice, no source: the far west of a country with one zone, summer time included
     */
    private static final Duration MOST_OFF_SUN = Duration.ofHours(4);

    private static final String JOB_FILE = "job.yaml";
    private static final long MOST_YAML_BYTES = 8L << 20;

    /** A whole day is planned with each. */
    private static final int MOST_OTHER_MACHINES = 20;

    /** What is not known where no file states it, and what counts instead. */
    private static final SortedMap<String, String> ABSENT =
            new TreeMap<>(
                    Map.of(
                            "wires",
                            "No file states wires, so no way and no place keeps off any. Perhaps"
                                    + " there are some: ask and look before flying.",
                            "map",
                            "No file states roads, houses, people or other things: no way keeps"
                                    + " off them and none is told.",
                            "canopy",
                            "No raster states trees. Along the ways, and at places where nobody"
                                    + " surveyed them, they count with the rules' canopy-on-legs-m;"
                                    + " elsewhere as surveyed."));

    private static final List<String> MAP_ROLES = List.of("zones", "wires", "map", "release_areas");
    private static final double MARGIN_M = 2000;

    /** About twice a rotor's diameter: wider cells say little about the room at a place. */
    private static final double COARSE_CELL_M = 20;

    private static final double WIDEST_M = 40_000;
    private static final double NEAR_FEATURE_M = 5000;

    private final ReferenceSystems systems;
    private final Readers readers;
    private final DaylightCheck daylight;

    /**
     * Who reads files of other formats.
     *
     * @param features of shapes with values that the job gives a meaning
     * @param maps of maps whose words have a public meaning
     */
    public record Readers(
            RasterReader rasters, List<FeatureReader> features, List<MapReader> maps) {
        public Readers {
            features = List.copyOf(features);
            maps = List.copyOf(maps);
        }
    }

    public JobFolderReader(ReferenceSystems systems, Readers readers, DaylightCheck daylight) {
        this.systems = systems;
        this.readers = readers;
        this.daylight = daylight;
    }

    @Override
    public JobReading read(Path folder) {
        Faults faults = new Faults();
        Optional<ReadJob> read = open(folder, faults).flatMap(opened -> new Pass(opened).read());
        return faults.isEmpty()
                ? new JobReading(read, List.of())
                : new JobReading(Optional.empty(), faults.list());
    }

    @Override
    public List<InputFile> list(Path folder) {
        Faults unsaid = new Faults();
        return open(folder, unsaid).map(opened -> new Pass(opened).inputs()).orElse(List.of());
    }

    @Override
    public Optional<ReferenceSystem> findSystem(Path folder, String path) {
        return open(folder, new Faults())
                .flatMap(
                        opened ->
                                new Pass(opened)
                                        .head.files().values().stream()
                                                .flatMap(List::stream)
                                                .filter(file -> file.name().equals(path))
                                                .findFirst())
                .flatMap(file -> file.system().system());
    }

    @Override
    public Optional<EmergencyPlan> findEmergency(Path folder) {
        return open(folder, new Faults())
                .flatMap(opened -> new Pass(opened).readEmergency())
                .map(EmergencyFile::plan);
    }

    @Override
    public Reading readEdition(Path folder, Path newer, String replaces) {
        Faults faults = new Faults();
        Optional<Opened> opened = open(folder, faults);
        Optional<ReadJob> read = opened.flatMap(one -> new Pass(one).read());
        Optional<Editions> editions =
                faults.isEmpty() && read.isPresent()
                        ? readEdition(opened.orElseThrow(), read.get().job(), newer, replaces)
                        : Optional.empty();
        return faults.isEmpty()
                ? new Reading(editions, List.of())
                : new Reading(Optional.empty(), faults.list());
    }

    private Optional<Editions> readEdition(Opened opened, Job job, Path newer, String replaces) {
        Pass pass = new Pass(opened);
        Source source = new Source(newer.toString(), opened.folder.job().faults());
        Optional<FileReference> old =
                new Replaced(pass.head, readers.maps()).find(source, newer, replaces);
        return old.map(
                file ->
                        new Editions(
                                job,
                                file.name(),
                                Contents.of(job.features(), job.wires(), file.name()),
                                pass.readMapWith(file, file.at(newer))));
    }

    /** A folder whose job.yaml can be read. */
    private record Opened(Folder folder, Fields fields) {}

    private Optional<Opened> open(Path folder, Faults faults) {
        Source job = new Source(JOB_FILE, faults);
        return hasJobFile(folder, job)
                ? TextFile.read(folder.resolve(JOB_FILE), job, MOST_YAML_BYTES)
                        .flatMap(text -> Yaml.read(text, job))
                        .map(fields -> new Opened(new Folder(whole(folder), job, systems), fields))
                : Optional.empty();
    }

    /** Seen from the root: nothing lies inside "." by its name alone. */
    private static Path whole(Path folder) {
        return folder.toAbsolutePath().normalize();
    }

    private static boolean hasJobFile(Path folder, Source job) {
        String name = String.valueOf(folder.getFileName());
        Source whole = new Source(name, job.faults());
        At nowhere = new At(0, "");
        if (!Files.isDirectory(folder)) {
            whole.fault(
                    FindingCode.FILE_MISSING,
                    nowhere,
                    "is no folder",
                    Found.allowing("a job folder"));
            return false;
        }
        try (Stream<Path> entries = Files.list(folder)) {
            if (entries.findAny().isEmpty()) {
                whole.fault(
                        FindingCode.JOB_EMPTY,
                        nowhere,
                        "is empty",
                        Found.allowing("a folder with job.yaml"));
                return false;
            }
        } catch (IOException unreadable) {
            whole.fault(
                    FindingCode.FILE_UNREADABLE,
                    nowhere,
                    "cannot be listed",
                    Found.allowing("a readable folder"));
            return false;
        }
        if (!Files.isRegularFile(folder.resolve(JOB_FILE))) {
            job.fault(
                    FindingCode.FILE_MISSING,
                    nowhere,
                    "is missing",
                    Found.allowing("job.yaml, which names the other files"));
            return false;
        }
        return true;
    }

    /** One reading of one folder. Mutable. */
    private final class Pass {
        private final Faults faults;
        private final Path folder;
        private final Mentions mentions = new Mentions();
        private Head head;
        private final List<Finding> findings = new ArrayList<>();
        private final FeatureFiles files = new FeatureFiles(readers.features());
        private final MapFiles map = new MapFiles(files, mentions);

        Pass(Opened opened) {
            this.faults = opened.folder.job().faults();
            this.folder = opened.folder.path();
            this.head = Head.read(opened.fields, opened.folder, mentions);
        }

        /** What the map files hold with another one in the place of one of them. */
        Contents readMapWith(FileReference old, FileReference other) {
            head = head.with(old, other);
            readMap(readPlaces().stream().map(PlaceRow::position).toList());
            return Contents.of(map.features(), map.wires(), other.name());
        }

        private List<PlaceRow> readPlaces() {
            return head.file("places")
                    .map(file -> PlacesFile.read(file, source(file), files, mentions))
                    .orElse(List.of());
        }

        Optional<ReadJob> read() {
            Optional<Rules> rules =
                    yaml("rules").flatMap(fields -> RulesFile.read(fields, head.day(), mentions));
            if (yaml("rules", false).isEmpty() || !mentions.has(Family.KIND)) {
                mentions.setUnread(Family.KIND);
            }
            List<PlaceRow> rows = readPlaces();
            int loadsBefore = faults.count();
            List<Load> loads =
                    head.file("loads")
                            .map(file -> LoadsFile.read(file, source(file), mentions))
                            .orElse(List.of());
            if (head.file("places").isEmpty() || (rows.isEmpty() && !mentions.has(Family.PLACE))) {
                mentions.setUnread(Family.PLACE);
            }
            boolean isUnread = loads.isEmpty() && loadsBefore < faults.count();
            if (head.file("loads").isEmpty() || (isUnread && !mentions.has(Family.LOAD))) {
                mentions.setUnread(Family.LOAD);
            }
            Optional<Machine> machine =
                    yaml("machine").flatMap(fields -> MachineFile.read(fields, mentions));
            List<Machine> others = readOtherMachines();
            Optional<Rigging> rigging =
                    yaml("rigging").flatMap(fields -> RiggingFile.read(fields, mentions));
            if (head.file("rigging").isPresent() && rigging.isEmpty()) {
                mentions.setUnread(Family.GEAR);
            }
            Optional<Weather> weather = readWeather();
            Optional<CrewsFile> crews =
                    yaml("crews").map(fields -> CrewsFile.read(fields, head.day(), mentions));
            List<Figure> figures =
                    head.file("learned")
                            .map(file -> LearnedFile.read(file, source(file)))
                            .orElse(List.of());
            List<Waiver> waivers = yaml("overrides").map(OverridesFile::read).orElse(List.of());
            Optional<EmergencyFile> emergency = readEmergency();
            emergency.ifPresent(stated -> stated.mention(mentions));
            Beside beside = readBeside();
            List<Position> positions = rows.stream().map(PlaceRow::position).toList();
            List<GeoPoint> features = readMap(positions);
            List<Confirmation> confirmations = readHazards();
            mentions.check();
            checkStart(rows);
            Optional<Ground> ground = readGround(positions, features);
            if (ground.isPresent() && rules.isPresent()) {
                checkPlaces(rows, ground.get(), rules.get());
                machine.ifPresent(
                        one -> checkTogether(rows, ground.get().frame(), one.rotorRadiusM()));
            }
            checkDaylight(positions);
            Stream.concat(machine.stream(), others.stream()).forEach(this::checkReserve);
            if (!faults.isEmpty()) {
                return Optional.empty();
            }
            Ground known = ground.orElseThrow();
            ReadJob.Stated stated =
                    new ReadJob.Stated(
                            SpreadsFields.with(
                                    HandlingFields.with(rules.orElseThrow(), rigging), figures),
                            machine.orElseThrow());
            LearnedRules learned = LearnedRules.of(stated.rules(), stated.machine(), figures);
            findings.addAll(learned.findings());
            if (head.magneticVariationRad().isEmpty()) {
                findings.add(
                        Finding.of(
                                FindingCode.VARIATION_ASSUMED,
                                Severity.CAUTION,
                                "magnetic-variation-deg",
                                JOB_FILE,
                                "No variation is stated; bearings that read MAG are TRUE ones."));
            }
            // Some files of a map bring wires too.
            Set<String> brought =
                    Stream.of(
                                    map.wires().isEmpty() ? "" : "wires",
                                    map.features().isEmpty() ? "" : "map")
                            .collect(Collectors.toSet());
            ABSENT.forEach(
                    (role, words) -> {
                        if (head.files(role).isEmpty() && !brought.contains(role)) {
                            findings.add(
                                    Finding.of(
                                            FindingCode.FILE_ABSENT,
                                            Severity.CAUTION,
                                            role,
                                            JOB_FILE,
                                            words));
                        }
                    });
            Job job =
                    new Job(
                            head.name(),
                            head.day().date(),
                            head.day().zone(),
                            known.frame().origin(),
                            head.magneticVariationRad().orElse(0),
                            new PlaceId(head.machineStart()),
                            rows.stream().map(PlaceRow::place).toList(),
                            loads,
                            learned.machine(),
                            weather.orElseThrow(),
                            crews.orElseThrow().crews(),
                            crews.orElseThrow().walks(),
                            learned.rules(),
                            map.features(),
                            map.wires(),
                            map.zones(),
                            map.areas(),
                            confirmations,
                            inputs(),
                            findings,
                            waivers);
            return Optional.of(
                    new ReadJob(
                            job,
                            known,
                            others,
                            stated,
                            beside,
                            new ReadJob.Emergency(
                                    emergency.map(EmergencyFile::plan).orElse(EmergencyPlan.NONE),
                                    head.file("places").flatMap(file -> file.system().system())),
                            FileSums.of(paths())));
        }

        /** Every file that is read, job.yaml too. */
        private Map<String, Path> paths() {
            Map<String, Path> paths = new HashMap<>();
            paths.put(JOB_FILE, folder.resolve(JOB_FILE));
            for (String role : Head.ROLES) {
                head.files(role).forEach(file -> paths.put(file.name(), file.path()));
            }
            return paths;
        }

        private Source source(FileReference file) {
            return new Source(file.name(), faults);
        }

        private Optional<Fields> yaml(String role) {
            return yaml(role, true);
        }

        /** The fields of a YAML file; without reporting, only whether they can be had. */
        private Optional<Fields> yaml(String role, boolean isReporting) {
            return head.file(role).flatMap(file -> yaml(file, isReporting));
        }

        private Optional<Fields> yaml(FileReference file, boolean isReporting) {
            Source source = isReporting ? source(file) : new Source(file.name(), new Faults());
            return TextFile.read(file.path(), source, MOST_YAML_BYTES)
                    .flatMap(text -> Yaml.read(text, source));
        }

        private List<Machine> readOtherMachines() {
            List<FileReference> named = head.files("other_machines");
            Set<String> known = new HashSet<>();
            head.file("machine").ifPresent(own -> known.add(own.name()));
            for (FileReference file : named) {
                if (!known.add(file.name())) {
                    refuseMachine("names a machine twice", file.name(), "each machine once");
                }
            }
            if (named.size() > MOST_OTHER_MACHINES) {
                refuseMachine(
                        "names too many machines",
                        String.valueOf(named.size()),
                        "at most " + MOST_OTHER_MACHINES);
                return List.of();
            }
            return named.stream()
                    .flatMap(file -> yaml(file, true).stream())
                    .flatMap(fields -> MachineFile.read(fields, mentions).stream())
                    .toList();
        }

        private void refuseMachine(String what, String found, String allowed) {
            head.fields()
                    .fault(
                            FindingCode.FIELD_OUT_OF_RANGE,
                            "other_machines",
                            what,
                            new Found(found, allowed));
        }

        private Optional<EmergencyFile> readEmergency() {
            return yaml("emergency").map(fields -> EmergencyFile.read(fields, head.day()));
        }

        private Beside readBeside() {
            return new Beside(
                    head.file("notices").flatMap(this::readNotices),
                    head.file("climate")
                            .filter(this::isTable)
                            .flatMap(file -> ClimateFile.read(file, source(file), head.day())),
                    head.file("archive")
                            .filter(this::isTable)
                            .flatMap(file -> ArchiveFile.read(file, source(file), head.day())),
                    head.file("permits")
                            .filter(this::isTable)
                            .map(file -> PermitsFile.read(file, source(file), mentions)));
        }

        private boolean isTable(FileReference file) {
            if (!file.isTable()) {
                source(file)
                        .fault(
                                FindingCode.FILE_UNREADABLE,
                                new At(0, ""),
                                "has an unknown ending",
                                new Found(file.name(), ".csv or .xlsx"));
            }
            return file.isTable();
        }

        private Optional<List<Notice>> readNotices(FileReference file) {
            if (!file.endsIn(".txt")) {
                source(file)
                        .fault(
                                FindingCode.FILE_UNREADABLE,
                                new At(0, ""),
                                "has an unknown ending",
                                new Found(file.name(), ".txt"));
                return Optional.empty();
            }
            Optional<List<Notice>> notices =
                    TextFile.read(file.path(), source(file), MOST_YAML_BYTES).map(NoticeText::read);
            notices.map(
                            all ->
                                    all.stream()
                                            .filter(one -> !one.unread().isEmpty())
                                            .map(Notice::nameOrLine)
                                            .toList())
                    .filter(unread -> !unread.isEmpty())
                    .ifPresent(
                            unread ->
                                    findings.add(
                                            Finding.of(
                                                    FindingCode.NOTICE_UNREAD,
                                                    Severity.CAUTION,
                                                    file.name(),
                                                    file.name(),
                                                    "Notices that cannot be read as a whole: "
                                                            + String.join(", ", unread)
                                                            + ". Read them in the source.")));
            return notices;
        }

        private Optional<Weather> readWeather() {
            Optional<FileReference> named = head.file("weather");
            if (named.isEmpty()) {
                return Optional.empty();
            }
            FileReference file = named.get();
            if (file.isYaml()) {
                return yaml(file, true).flatMap(fields -> WeatherFile.readYaml(fields, head.day()));
            }
            if (!file.isTable() && !file.endsIn(".txt")) {
                source(file)
                        .fault(
                                FindingCode.FILE_UNREADABLE,
                                new At(0, ""),
                                "has an unknown ending",
                                new Found(file.name(), ".csv, .xlsx, .yaml or .txt"));
                return Optional.empty();
            }
            if (file.details().isEmpty()) {
                head.fields()
                        .fault(
                                FindingCode.FIELD_MISSING,
                                "weather",
                                "says nothing of reference-elevation-m and lapse-c-per-100m",
                                new Found(file.name(), "a mapping with file and these fields"));
            }
            if (file.endsIn(".txt")) {
                ReportHours reports = new ReportHours(source(file), head.day(), findings);
                return TextFile.read(file.path(), source(file), MOST_YAML_BYTES)
                        .map(reports::read)
                        .flatMap(
                                hours ->
                                        WeatherFile.ofHours(
                                                hours, source(file), head.day(), file.details()));
            }
            return WeatherFile.readTable(file, source(file), head.day(), file.details());
        }

        /** The job's own files come first, so that their ids stand whatever a map holds. */
        private List<GeoPoint> readMap(List<Position> places) {
            List<GeoPoint> points = new ArrayList<>();
            if (!places.isEmpty()) {
                Axes.checkPlaces(places);
            }
            for (String role : MAP_ROLES) {
                for (FileReference file : head.files(role)) {
                    if (!isForeign(file)) {
                        points.addAll(readMapFile(file, places));
                    }
                }
            }
            List<MapBox> boxes = MapBox.around(near(places), NEAR_FEATURE_M);
            ForeignMaps foreign = new ForeignMaps(readers.maps(), mentions, findings);
            for (FileReference file : head.files("map")) {
                if (isForeign(file)) {
                    foreign.read(file, source(file), boxes, map);
                }
            }
            return points;
        }

        private boolean isForeign(FileReference file) {
            return ForeignMaps.findReader(readers.maps(), file).isPresent();
        }

        private List<GeoPoint> readMapFile(FileReference file, List<Position> places) {
            int before = faults.count();
            List<Position> positions = map.read(file, source(file));
            if (positions.isEmpty() && faults.count() > before) {
                mentions.setUnread(Family.FEATURE); // it may hold what the register speaks of
            }
            if (!places.isEmpty()) {
                Axes.checkFile(positions, Axes.middle(places));
            }
            return positions.stream().map(Position::point).toList();
        }

        /** Where the places are but for those far off, which are a fault by now. */
        private static List<GeoPoint> near(List<Position> places) {
            if (places.isEmpty()) {
                return List.of();
            }
            GeoPoint middle = Axes.middle(places);
            return places.stream()
                    .map(Position::point)
                    .filter(point -> !Axes.isFar(point, middle))
                    .toList();
        }

        private List<Confirmation> readHazards() {
            boolean isMapNamed =
                    MAP_ROLES.stream()
                            .allMatch(
                                    role ->
                                            head.fields().findNode(role).isPresent()
                                                    == !head.files(role).isEmpty());
            if (!isMapNamed) {
                mentions.setUnread(Family.FEATURE);
            }
            return head.file("hazards")
                    .map(file -> HazardsFile.read(file, source(file), head.day().date(), mentions))
                    .orElse(List.of());
        }

        private Optional<Ground> readGround(List<Position> places, List<GeoPoint> features) {
            if (places.isEmpty() || head.file("terrain").isEmpty()) {
                return Optional.empty();
            }
            // A place that is far off is a fault by now, and no plane reaches there.
            GeoPoint middle = Axes.middle(places);
            List<Position> near =
                    places.stream().filter(each -> !Axes.isFar(each.point(), middle)).toList();
            if (!near.stream().allMatch(each -> Axes.hasPlane(each.point()))) {
                return Optional.empty();
            }
            return readGroundAt(near, features);
        }

        private Optional<Ground> readGroundAt(List<Position> places, List<GeoPoint> features) {
            LocalFrame frame = Axes.frame(places);
            double halfM = halfWidthM(frame, places, features);
            Optional<HeightField> terrain = readRasters("terrain", frame, halfM);
            Optional<HeightField> canopy = readRasters("canopy", frame, halfM);
            double spreadM =
                    head.file("canopy")
                            .flatMap(FileReference::details)
                            .map(
                                    fields ->
                                            fields.findQuantity(
                                                            "spread",
                                                            Quantity.LENGTH,
                                                            Range.of(0, 50, "between 0 and 50 m"))
                                                    .orElse(0))
                            .orElse(0.0);
            if (terrain.isEmpty() || isAllOutside(places, frame, terrain.get())) {
                checkSwapped(places, halfM);
            }
            return terrain.map(field -> new Ground(frame, field, canopy, spreadM));
        }

        private static double halfWidthM(
                LocalFrame frame, List<Position> places, List<GeoPoint> features) {
            double farthestM = 0;
            for (Position place : places) {
                farthestM = Math.max(farthestM, reachM(frame.toPlane(place.point())));
            }
            double nearM = farthestM + NEAR_FEATURE_M;
            for (GeoPoint feature : features) {
                if (!Axes.isFar(feature, frame.origin())) {
                    double reachM = reachM(frame.toPlane(feature));
                    farthestM = reachM <= nearM ? Math.max(farthestM, reachM) : farthestM;
                }
            }
            return Math.min(WIDEST_M, farthestM + MARGIN_M);
        }

        private static double reachM(PlanePoint point) {
            return Math.max(Math.abs(point.eastM()), Math.abs(point.northM()));
        }

        private Optional<HeightField> readRasters(String role, LocalFrame frame, double halfM) {
            List<HeightField> fields = new ArrayList<>();
            for (FileReference file : head.files(role)) {
                if (file.system().isStated() && file.system().system().isEmpty()) {
                    continue; // its system is a fault already
                }
                RasterReader.Reading reading = readRaster(file, frame, halfM);
                faults.addAll(reading.faults());
                reading.field().ifPresent(fields::add);
            }
            return fields.isEmpty() ? Optional.empty() : Optional.of(Mosaic.of(fields));
        }

        /** A raster's own system counts before the one for all files, but not before its own fault. */
        private RasterReader.Reading readRaster(
                FileReference file, LocalFrame frame, double halfM) {
            Optional<ReferenceSystem> stated = file.system().system();
            Optional<ReferenceSystem> own = file.system().isOwn() ? stated : Optional.empty();
            RasterReader.Reading reading = readers.rasters().read(request(file, own, frame, halfM));
            boolean hasNone =
                    reading.faults().stream()
                            .anyMatch(
                                    fault -> fault.code() == FindingCode.REFERENCE_SYSTEM_MISSING);
            return hasNone && own.isEmpty() && stated.isPresent()
                    ? readers.rasters().read(request(file, stated, frame, halfM))
                    : reading;
        }

        private static RasterReader.Request request(
                FileReference file,
                Optional<ReferenceSystem> system,
                LocalFrame frame,
                double halfM) {
            return new RasterReader.Request(
                    file.path(), file.name(), system, file.detail("band"), frame, halfM);
        }

        private static boolean isAllOutside(
                List<Position> places, LocalFrame frame, HeightField terrain) {
            return places.stream()
                    .map(place -> frame.toPlane(place.point()))
                    .noneMatch(point -> terrain.covers(point.eastM(), point.northM()));
        }

        /** All places off the terrain: perhaps all of them are the wrong way round. */
        private void checkSwapped(List<Position> places, double halfM) {
            List<Position> swapped = new ArrayList<>();
            for (Position place : places) {
                Position.Pair pair = place.pair().swapped();
                pair.toGeo()
                        .ifPresent(
                                point ->
                                        swapped.add(
                                                new Position(
                                                        place.source(), place.at(), pair, point)));
            }
            if (swapped.isEmpty()) {
                return;
            }
            GeoPoint middle = Axes.middle(swapped);
            swapped.removeIf(
                    each -> Axes.isFar(each.point(), middle) || !Axes.hasPlane(each.point()));
            if (swapped.isEmpty()) {
                return;
            }
            LocalFrame frame = Axes.frame(swapped);
            for (FileReference file : head.files("terrain")) {
                Optional<HeightField> field = readRaster(file, frame, halfM).field();
                if (field.isPresent() && !isAllOutside(swapped, frame, field.get())) {
                    Position first = places.get(0);
                    Position.reportSwapped(first.source(), first.at(), first.pair());
                    return;
                }
            }
        }

        private void checkCells(Ground ground) {
            double cellM = ground.terrain().cellSizeM();
            if (cellM > COARSE_CELL_M) {
                findings.add(
                        new Finding(
                                FindingCode.TERRAIN_COARSE,
                                Severity.CAUTION,
                                "terrain",
                                // Never shown as wide as the limit itself.
                                BigDecimal.valueOf(cellM)
                                        .setScale(1, RoundingMode.CEILING)
                                        .stripTrailingZeros()
                                        .toPlainString(),
                                String.format(Locale.ROOT, "%.0f", COARSE_CELL_M),
                                "m",
                                "PRACTICE",
                                "The terrain has one height for each cell. What rises between two of them is"
                                        + " not seen. Perhaps a finer raster can be had."));
            }
        }

        private void checkPlaces(List<PlaceRow> rows, Ground ground, Rules rules) {
            checkCells(ground);
            for (PlaceRow row : rows) {
                Place place = row.place();
                if (Axes.isFar(place.position(), ground.frame().origin())) {
                    continue; // a fault already
                }
                PlanePoint point = ground.frame().toPlane(place.position());
                String file = row.position().source().name();
                if (!ground.terrain().covers(point.eastM(), point.northM())) {
                    findings.add(
                            Finding.of(
                                    FindingCode.OUTSIDE_TERRAIN,
                                    Severity.STOP,
                                    place.id().value(),
                                    file,
                                    "The terrain raster says nothing about this place."));
                } else if (place.statedElevationAmslM().isPresent()) {
                    double groundM = ground.terrain().heightM(point.eastM(), point.northM());
                    compare(
                            place,
                            groundM,
                            new Tolerance(rules.distances().elevationToleranceM(), file));
                }
            }
        }

        /** Whoever stands at one of two places under one rotor stands under what comes to the other. */
        private void checkTogether(List<PlaceRow> all, LocalFrame frame, double rotorRadiusM) {
            // What is far off is a fault already, and may lie beyond the plane.
            List<PlaceRow> rows =
                    all.stream()
                            .filter(row -> !Axes.isFar(row.place().position(), frame.origin()))
                            .toList();
            List<PlanePoint> points =
                    rows.stream().map(row -> frame.toPlane(row.place().position())).toList();
            for (int i = 0; i < rows.size(); i++) {
                Place place = rows.get(i).place();
                for (int k = 0; k < i; k++) {
                    Place other = rows.get(k).place();
                    double apartM = points.get(i).distanceToM(points.get(k));
                    if (apartM < rotorRadiusM) {
                        findings.add(
                                new Finding(
                                        FindingCode.PLACES_TOGETHER,
                                        Severity.CAUTION,
                                        place.id().value(),
                                        String.format(Locale.ROOT, "%.1f", apartM),
                                        String.format(Locale.ROOT, "%.1f", rotorRadiusM),
                                        "m",
                                        rows.get(i).position().source().name(),
                                        String.format(
                                                Locale.ROOT,
                                                "By the list %s is %.1f m away from %s, under one rotor. Perhaps a"
                                                        + " position was copied. Who waits at one stands"
                                                        + " under what comes to the other.",
                                                place.id().value(),
                                                apartM,
                                                other.id().value())));
                    }
                }
            }
        }

        private void checkStart(List<PlaceRow> rows) {
            for (PlaceRow row : rows) {
                Place place = row.place();
                if (place.id().value().equals(head.machineStart())
                        && !(place.standing() && place.agreed())) {
                    head.fields()
                            .fault(
                                    FindingCode.FIELD_OUT_OF_RANGE,
                                    "machine_start",
                                    place.agreed()
                                            ? "is a place where the machine may not stand"
                                            : "is a place whose owner has not agreed",
                                    new Found(
                                            head.machineStart(),
                                            "a laydown or landing that may be stood on"));
                }
            }
        }

        private record Tolerance(double heightM, String file) {}

        private void compare(Place place, double groundM, Tolerance tolerance) {
            double differenceM = place.statedElevationAmslM().getAsDouble() - groundM;
            if (Math.abs(differenceM) > tolerance.heightM) {
                findings.add(
                        new Finding(
                                FindingCode.ELEVATION_DIFFERS,
                                Severity.CAUTION,
                                place.id().value(),
                                String.format(Locale.ROOT, "%.1f", differenceM),
                                String.format(Locale.ROOT, "%.1f", tolerance.heightM),
                                "m",
                                tolerance.file,
                                String.format(
                                        Locale.ROOT,
                                        "The listed elevation is %.1f m, the terrain's %.1f m. Perhaps the"
                                                + " place is not where the list says.",
                                        place.statedElevationAmslM().getAsDouble(),
                                        groundM)));
            }
        }

        private void checkDaylight(List<Position> places) {
            if (places.isEmpty() || !head.isDayKnown()) {
                return;
            }
            GeoPoint where = Axes.middle(places);
            if (!daylight.hasSun(where, head.day().date(), head.day().zone())) {
                head.fields()
                        .fault(
                                FindingCode.NO_SUN,
                                "date",
                                "is a day on which the sun does not rise there",
                                new Found(head.day().date().toString(), "a day with sun"));
            }
            checkZone(where);
        }

        /** The operator may have leave for less; a digit that is missing looks the same. */
        private void checkReserve(Machine machine) {
            if (machine.reserveS() >= USUAL_RESERVE.toSeconds()) {
                return;
            }
            findings.add(
                    new Finding(
                            FindingCode.RESERVE_SHORT,
                            Severity.CAUTION,
                            machine.name(),
                            // Never shown as long as what is usual.
                            BigDecimal.valueOf(machine.reserveS() / 60)
                                    .setScale(1, RoundingMode.FLOOR)
                                    .stripTrailingZeros()
                                    .toPlainString(),
                            Long.toString(USUAL_RESERVE.toMinutes()),
                            "min",
                            "WAC-296-45",
                            "The reserve is short. Where people work below, 20 min are asked; 10 by some"
                                    + " rules, by day and near the start. Perhaps a digit is missing."));
        }

        /** Nowhere do clocks stand so far from the sun's. */
        private void checkZone(GeoPoint where) {
            ZoneOffset offset =
                    head.day()
                            .zone()
                            .getRules()
                            .getOffset(head.day().date().atTime(LocalTime.NOON));
            long sunS = Math.round(where.lonDeg() * SECONDS_PER_DEGREE);
            long day = Duration.ofDays(1).toSeconds();
            long aheadS = Math.floorMod(offset.getTotalSeconds() - sunS, day);
            if (Math.min(aheadS, day - aheadS) > MOST_OFF_SUN.toSeconds()) {
                findings.add(
                        new Finding(
                                FindingCode.ZONE_DOUBTED,
                                Severity.CAUTION,
                                "zone",
                                head.day().zone().getId(),
                                "",
                                "",
                                JOB_FILE,
                                "By this zone the sun stands highest there at about "
                                        + LocalTime.NOON
                                                .plusSeconds(aheadS)
                                                .plusMinutes(30)
                                                .truncatedTo(ChronoUnit.HOURS)
                                        + ". Perhaps it is another zone: daylight, sun, weather and"
                                        + " crews' hours hang on it."));
            }
        }

        private List<InputFile> inputs() {
            List<InputFile> inputs = new ArrayList<>();
            for (String role : Head.ROLES) {
                for (FileReference file : head.files(role)) {
                    InputFile stated = file.toInputFile();
                    inputs.add(
                            ForeignMaps.findReader(readers.maps(), file)
                                    .map(reader -> withUsual(stated, reader))
                                    .orElse(stated));
                }
            }
            return inputs;
        }

        /** What usually holds for such a file counts where the job states nothing. */
        private static InputFile withUsual(InputFile stated, MapReader reader) {
            return new InputFile(
                    stated.path(),
                    stated.role(),
                    stated.licence().isEmpty() ? reader.usualLicence() : stated.licence(),
                    stated.attribution().isEmpty()
                            ? reader.usualAttribution()
                            : stated.attribution());
        }
    }
}
