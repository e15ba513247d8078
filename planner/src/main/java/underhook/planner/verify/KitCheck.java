package underhook.planner.verify;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import underhook.core.finding.FindingCode;
import underhook.core.job.LineItem;
import underhook.core.job.Load;
import underhook.core.job.Rigging;
import underhook.core.plan.KitItem;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;

/** The list of gear that is packed in the morning: nothing that a lift hangs in may be missing or too few. */
final class KitCheck {
    private final Day day;
    private final Rigging rigging;
    private final Map<String, Integer> atOnce = new HashMap<>();
    private final Map<String, Integer> forDay = new HashMap<>();

    KitCheck(Day day) {
        this.day = day;
        this.rigging = day.job().rules().handling().rigging();
    }

    void run() {
        for (Step step : day.plan().steps()) {
            step.rotation().ifPresent(rotation -> count(step, rotation));
        }
        TreeSet<String> names = new TreeSet<>(atOnce.keySet());
        names.forEach(this::check);
        for (KitItem item : day.plan().kit()) {
            boolean known =
                    rigging.stock().stream().anyMatch(gear -> gear.name().equals(item.name()));
            demand(known, item.name(), "is not in stock");
            if (known) {
                checkTag(item, rigging.getGear(item.name()));
            }
        }
    }

    private void count(Step step, Rotation rotation) {
        Map<String, Integer> pieces = new HashMap<>();
        for (Load load : day.loadsOf(rotation.loads())) {
            Optional<Rigging.SlingSet> set = rigging.findSet(load.kind());
            if (set.isPresent()) {
                pieces.merge(set.get().leg(), set.get().legs(), Integer::sum);
                set.get().upward().forEach(name -> pieces.merge(name, 1, Integer::sum));
            }
        }
        pieces.forEach(
                (name, count) -> {
                    atOnce.merge(name, count, Math::max);
                    forDay.merge(name, count, Integer::sum);
                });
        for (LineItem line : day.job().machine().lines()) {
            if (Math.abs(line.lengthM() - step.lineLengthM()) < Tolerance.LENGTH_M) {
                line.make().gear().forEach(this::stays);
            }
        }
        rigging.belly().forEach(this::stays);
    }

    /** Hangs under the machine all day. */
    private void stays(String name) {
        atOnce.merge(name, 1, Math::max);
        forDay.merge(name, 1, Math::max);
    }

    private void check(String name) {
        Optional<KitItem> stated =
                day.plan().kit().stream().filter(item -> item.name().equals(name)).findFirst();
        demand(stated.isPresent(), name, "is missing from the kit");
        stated.ifPresent(
                item ->
                        demand(
                                item.atOnce() >= atOnce.getOrDefault(name, 0)
                                        && item.forDay() >= forDay.getOrDefault(name, 0),
                                name,
                                "is needed more often than stated"));
    }

    private void checkTag(KitItem item, Rigging.Gear gear) {
        demand(item.count() <= gear.count(), item.name(), "is fewer in stock than stated");
        Optional<LocalDate> due =
                gear.dates()
                        .map(
                                dates ->
                                        dates.dueOn().isBefore(dates.retireOn())
                                                ? dates.dueOn()
                                                : dates.retireOn());
        demand(item.dueOn().equals(due), item.name(), "is due on another day than stated");
    }

    private void demand(boolean holds, String name, String what) {
        day.ledger()
                .demand(
                        holds,
                        FindingCode.STATED_WRONG,
                        name,
                        () -> Told.of("rigging", name + " " + what + "."));
    }
}
