package underhook.app.evening;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import underhook.app.port.ClosedDay.LiftLine;
import underhook.app.port.FlownSample;
import underhook.app.port.ReadJob;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.flown.FlownDay;
import underhook.core.flown.Tap;
import underhook.core.job.Job;
import underhook.core.learn.Credibility;
import underhook.core.learn.Measure;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;

/** What a day teaches: flown against planned, and the estimates that come of it. */
final class Learning {
    /** The plan's own figures count as so many flights. @source PRACTICE about a quarter of a day */
    private static final double PLAN_SAMPLES = 10;

    /** What is told against so few others says little of it. @source PRACTICE */
    private static final int LEAST_SAMPLES = 4;

    /** So many times the middle one is no spread of flying. @source PRACTICE */
    private static final double FAR_FACTOR = 3;

    private final Job job;
    private final List<Rotation> rotations;

    Learning(ReadJob read, Plan plan) {
        // Factors hold for what the files state: beside what was learned already a second day would
        // take it back.
        job = read.job().withRules(read.stated().rules()).withMachine(read.stated().machine());
        rotations = plan.steps().stream().flatMap(step -> step.rotation().stream()).toList();
    }

    /** Every figure that was planned and measured on the day. */
    List<FlownSample> samples(List<LiftLine> lines, FlownDay flown) {
        List<FlownSample> samples = new ArrayList<>();
        for (LiftLine line : lines) {
            boolean wasPlanned = line.plannedHookedAt().isPresent();
            if (!wasPlanned || !line.isDone()) {
                continue;
            }
            String group = group(line);
            // What came so heavy that it was given up first weighs what it weighs all the same.
            if (wasAlone(line) && !line.isGivenUp()) {
                if (!line.takenOver()) {
                    add(
                            samples,
                            Measure.LIFT_TIME,
                            group,
                            between(line.plannedHookedAt(), line.plannedDoneAt()),
                            between(line.hookedAt(), line.doneAt()));
                }
                add(
                        samples,
                        Measure.HOVER_TIME,
                        group,
                        job.getKind(line.kind()).setDownS(),
                        line.hoverS().orElse(0));
            }
            add(
                    samples,
                    Measure.MASS,
                    line.kind(),
                    line.listedKg().isPresent()
                            ? line.listedKg().getAsDouble() + ballastKg(line)
                            : 0,
                    line.readKg().orElse(0));
        }
        fuelSamples(lines, flown, samples);
        return samples;
    }

    /** A reading of the gauge, and what is burnt from then on besides the flow. */
    private record Gauge(Instant at, double readKg, double startKg) {}

    /**
     * Fuel of each run of the engine, from its first reading to its last, against what a plan takes for it:
     * the start, the flow, and what hovers with a pole burn more. A run is one sample, not each stretch of
     * it: a minute on the ground would count for as much as half an hour in the air.
     */
    private void fuelSamples(List<LiftLine> lines, FlownDay flown, List<FlownSample> samples) {
        Optional<Gauge> first = Optional.empty();
        Optional<Gauge> last = Optional.empty();
        OptionalDouble filledKg = OptionalDouble.empty();
        boolean runs = false;
        for (Tap tap : flown.taps()) {
            OptionalDouble readKg = tap.amount().massKg();
            switch (tap.kind()) {
                case ENGINE_ON -> {
                    OptionalDouble fromKg = readKg.isPresent() ? readKg : filledKg;
                    first = gauge(tap, fromKg, job.machine().startFuelKg());
                    last = Optional.empty();
                    runs = true;
                }
                case LANDING -> last = readKg.isPresent() ? gauge(tap, readKg, 0) : last;
                case ENGINE_OFF -> {
                    last = readKg.isPresent() ? gauge(tap, readKg, 0) : last;
                    addRun(lines, first, last, samples);
                    first = Optional.empty();
                    filledKg = readKg;
                    runs = false;
                }
                case REFUELLED -> {
                    addRun(lines, first, last, samples);
                    first = runs ? gauge(tap, readKg, 0) : Optional.empty();
                    last = Optional.empty();
                    filledKg = readKg;
                }
                default -> {}
            }
        }
        addRun(lines, first, last, samples);
    }

    private static Optional<Gauge> gauge(Tap tap, OptionalDouble readKg, double startKg) {
        return readKg.isPresent()
                ? Optional.of(new Gauge(tap.at(), readKg.getAsDouble(), startKg))
                : Optional.empty();
    }

    private void addRun(
            List<LiftLine> lines,
            Optional<Gauge> first,
            Optional<Gauge> last,
            List<FlownSample> samples) {
        if (first.isEmpty() || last.isEmpty()) {
            return;
        }
        Gauge from = first.get();
        Gauge to = last.get();
        double moreKgPerS = job.machine().hoverBurnKgPerS() - job.machine().burnKgPerS();
        double hoverS =
                lines.stream()
                        .filter(line -> job.getKind(line.kind()).standsUp())
                        .filter(
                                line ->
                                        line.doneAt()
                                                .filter(at -> within(at, from, to))
                                                .isPresent())
                        .mapToDouble(line -> job.getKind(line.kind()).setDownS())
                        .sum();
        add(
                samples,
                Measure.FUEL,
                job.machine().name(),
                from.startKg()
                        + seconds(from.at(), to.at()) * job.machine().burnKgPerS()
                        + hoverS * moreKgPerS,
                from.readKg() - to.readKg());
    }

    private static boolean within(Instant at, Gauge from, Gauge to) {
        return !at.isBefore(from.at()) && !at.isAfter(to.at());
    }

    private static void add(
            List<FlownSample> samples,
            Measure quantity,
            String group,
            double plannedAmount,
            double flownAmount) {
        if (plannedAmount > 0 && flownAmount > 0) {
            samples.add(new FlownSample(quantity, group, plannedAmount, flownAmount));
        }
    }

    private String group(LiftLine line) {
        String place = job.findPlace(line.to()).map(p -> p.kind().name()).orElse("");
        String lineM =
                line.lineM().isPresent()
                        ? Math.round(line.lineM().getAsDouble()) + " m"
                        : "unknown line";
        return line.kind() + " / " + place.toLowerCase(Locale.ROOT) + " / " + lineM;
    }

    /**
     * Times of today that are far above the others of their group: most likely something else was done meanwhile, and
     * whoever was there knows.
     */
    static List<Finding> far(List<FlownSample> today, List<FlownSample> earlier) {
        List<FlownSample> all = new ArrayList<>(earlier);
        all.addAll(today);
        List<Finding> far = new ArrayList<>();
        for (FlownSample sample : today) {
            boolean isTime =
                    sample.quantity() == Measure.LIFT_TIME
                            || sample.quantity() == Measure.HOVER_TIME;
            double[] ratios =
                    all.stream()
                            .filter(one -> one.quantity() == sample.quantity())
                            .filter(one -> one.group().equals(sample.group()))
                            .mapToDouble(Learning::ratio)
                            .sorted()
                            .toArray();
            double middle = ratios[(ratios.length - 1) / 2];
            if (isTime && ratios.length >= LEAST_SAMPLES && ratio(sample) > FAR_FACTOR * middle) {
                far.add(far(sample, middle, ratios.length));
            }
        }
        return far;
    }

    private static Finding far(FlownSample sample, double middleRatio, int samples) {
        String flown = String.format(Locale.ROOT, "%.1f", ratio(sample));
        String middle = String.format(Locale.ROOT, "%.1f", middleRatio);
        return new Finding(
                FindingCode.SAMPLE_FAR,
                Severity.NOTE,
                sample.group(),
                flown,
                middle,
                "",
                "PRACTICE",
                (sample.quantity() == Measure.LIFT_TIME ? "A lift" : "A hover")
                        + " of "
                        + sample.group()
                        + " took "
                        + flown
                        + " times as long as planned, the middle one of "
                        + samples
                        + " took "
                        + middle
                        + ". It counts in what is learned: where something else was done meanwhile, take its row"
                        + " out of samples.csv.");
    }

    private static double ratio(FlownSample sample) {
        return sample.flownAmount() / sample.plannedAmount();
    }

    /** Estimates of all days together. */
    static Map<Measure, Credibility> learned(List<FlownSample> today, List<FlownSample> earlier) {
        Map<Measure, Map<String, List<Credibility.Sample>>> grouped = new EnumMap<>(Measure.class);
        List<FlownSample> all = new ArrayList<>(earlier);
        all.addAll(today);
        for (FlownSample sample : all) {
            grouped.computeIfAbsent(sample.quantity(), q -> new LinkedHashMap<>())
                    .computeIfAbsent(sample.group(), g -> new ArrayList<>())
                    .add(Credibility.Sample.of(ratio(sample)));
        }
        Map<Measure, Credibility> learned = new EnumMap<>(Measure.class);
        grouped.forEach(
                (quantity, groups) ->
                        learned.put(
                                quantity,
                                Credibility.of(
                                                groups.entrySet().stream()
                                                        .map(
                                                                e ->
                                                                        new Credibility.Group(
                                                                                e.getKey(),
                                                                                e.getValue()))
                                                        .toList())
                                        .towardsPlan(PLAN_SAMPLES)));
        return learned;
    }

    /** Loads that shared a trip share its time: it is no measure of either. */
    private boolean wasAlone(LiftLine line) {
        return rotations.stream()
                .anyMatch(r -> r.loads().size() == 1 && r.loads().contains(line.load()));
    }

    /** Ballast hangs under the load and in the reading of the load cell. */
    private double ballastKg(LiftLine line) {
        return rotations.stream()
                .filter(rotation -> rotation.loads().contains(line.load()))
                .mapToDouble(Rotation::ballastKg)
                .sum();
    }

    private static double between(Optional<Instant> from, Optional<Instant> to) {
        return from.flatMap(a -> to.map(b -> seconds(a, b))).orElse(0.0);
    }

    private static double seconds(Instant from, Instant to) {
        return Duration.between(from, to).toMillis() / 1000.0;
    }
}
