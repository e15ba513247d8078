package underhook.adapter.table;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import underhook.app.port.OutputWriter;
import underhook.app.port.Written;
import underhook.core.job.Job;
import underhook.core.job.Load;
import underhook.core.job.MassStatus;
import underhook.core.plan.Drop;
import underhook.core.plan.Limit;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;

/** Writes loads.csv: one row for each load of the job, with its rotation or why it is left out. */
public final class LoadsCsvWriter implements OutputWriter {
    private static final List<String> COLUMNS =
            List.of(
                    "id",
                    "kind",
                    "from",
                    "to",
                    "mass_typed",
                    "mass_used_kg",
                    "mass_status",
                    "step",
                    "hooked_at",
                    "released_at",
                    "fuel_at_hook_kg",
                    "fuel_max_kg",
                    "margin_percent",
                    "governing_limit",
                    "left_out");

    @Override
    public String fileName() {
        return "loads.csv";
    }

    @Override
    public void write(Output output, Path file) throws IOException {
        Job job = output.readJob().job();
        try (Table table = Table.open(file, output, COLUMNS)) {
            job.loads().forEach(load -> table.row(cells(load, job, output.plan())));
        }
    }

    private static List<String> cells(Load load, Job job, Plan plan) {
        Optional<Ride> ride = findRide(load, plan);
        Optional<Rotation> rotation = ride.map(Ride::rotation);
        Optional<Limit> governing =
                rotation.flatMap(r -> r.limits().stream().filter(Limit::governing).findFirst());
        return List.of(
                load.id().value(),
                load.kind(),
                load.from().value(),
                load.to().value(),
                load.massTyped(),
                massUsed(load, job),
                load.massStatus().name(),
                ride.map(r -> Integer.toString(r.number())).orElse(""),
                rotation.map(r -> Written.time(r.hookedAt(), job.zone())).orElse(""),
                ride.flatMap(Ride::drop)
                        .map(d -> Written.time(d.releasedAt(), job.zone()))
                        .orElse(""),
                rotation.map(r -> Written.down(r.fuelAtHookKg(), 1))
                        .map(LoadsCsvWriter::plain)
                        .orElse(""),
                rotation.map(r -> Written.down(r.fuelMaxKg(), 1))
                        .map(LoadsCsvWriter::plain)
                        .orElse(""),
                governing.map(l -> plain(Written.down(l.marginPercent(), 1))).orElse(""),
                governing.map(Limit::code).orElse(""),
                plan.leftOut().stream()
                        .filter(out -> out.load().equals(load.id()))
                        .map(out -> out.code() + ": " + out.message())
                        .collect(Collectors.joining("; ")));
    }

    /** The mass planned for lift, an estimated one with its surcharge, rounded up to whole kg as it is lifted. */
    private static String massUsed(Load load, Job job) {
        if (load.massKg().isEmpty()) {
            return "";
        }
        double factor =
                job.getKind(load.kind()).heavierFactor()
                        * (load.massStatus() == MassStatus.ESTIMATED
                                ? job.rules().masses().estimatedMassFactor()
                                : 1);
        // The third decimal takes up the last digit of the product, which may be off.
        double planned = Written.nearest(load.massKg().getAsDouble() * factor, 3).doubleValue();
        return plain(Written.up(planned, 0));
    }

    private static String plain(BigDecimal number) {
        return number.toPlainString();
    }

    private static Optional<Ride> findRide(Load load, Plan plan) {
        for (int i = 0; i < plan.steps().size(); i++) {
            Optional<Rotation> rotation = plan.steps().get(i).rotation();
            if (rotation.isPresent() && rotation.get().loads().contains(load.id())) {
                Optional<Drop> drop =
                        rotation.get().drops().stream()
                                .filter(d -> d.load().equals(load.id()))
                                .findFirst();
                return Optional.of(new Ride(i + 1, rotation.get(), drop));
            }
        }
        return Optional.empty();
    }

    /** The rotation that carries a load, and its step counted from 1. */
    private record Ride(int number, Rotation rotation, Optional<Drop> drop) {}
}
