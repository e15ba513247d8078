package underhook.app.compare;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.ToDoubleFunction;
import underhook.app.PlanDay;
import underhook.app.Progress;
import underhook.app.compare.Alternative.Kind;
import underhook.core.finding.Finding;
import underhook.core.finding.Severity;

/**
 * Plans a job in each way that it offers and sets the days side by side. Each is planned and re-checked like the
 * plan of record; nothing is kept or written.
 */
public final class CompareDays {
    private final PlanDay planDay;

    /**
     * One day.
     *
     * @param figures empty when there is no such day
     * @param why there is none
     * @param isCutShort whether it was looked at to the end; without figures nobody knows then whether there is one
     */
    public record Row(
            Alternative way, Optional<DayFigures> figures, String why, boolean isCutShort) {}

    /**
     * Where a day stands among others of the same loads, 1 the best; loads that stay behind count first. Equal days
     * share a place.
     *
     * @param byMinutes with fewer minutes in the air before more
     * @param byGround with less time over closed ground before more, then over guarded ground, then fewer crossings
     */
    public record Rank(int byMinutes, int byGround) {}

    public CompareDays(PlanDay planDay) {
        this.planDay = planDay;
    }

    /** Plans one of them. */
    public Row plan(Alternative way, PlanDay.Request request, Progress progress) {
        return planDay.tryOut(way.job(), request, progress)
                .fold(
                        refused -> impossible(way, String.valueOf(refused.faults().get(0))),
                        none ->
                                none.isStopped()
                                        ? new Row(
                                                way,
                                                Optional.empty(),
                                                "Stopped before there was a day.",
                                                true)
                                        : impossible(
                                                way,
                                                "No plan is possible. " + first(none.findings())),
                        wrong ->
                                impossible(
                                        way,
                                        "The re-check refused the plan. "
                                                + first(wrong.report().violations())),
                        planned -> {
                            DayFigures figures = DayFigures.of(planned.output().plan());
                            return new Row(way, Optional.of(figures), "", figures.cutShort());
                        });
    }

    /** Plans one after the other; what was done when it is stopped is the answer. */
    public List<Row> plan(List<Alternative> ways, PlanDay.Request request, Progress progress) {
        BooleanSupplier stopped = request.stopped();
        List<Row> rows = new ArrayList<>();
        for (Alternative way : ways) {
            if (!rows.isEmpty() && stopped.getAsBoolean()) {
                break;
            }
            double before = (double) rows.size() / ways.size();
            Progress oneOfAll =
                    new Progress() {
                        @Override
                        public void at(String doing, double done) {
                            progress.at(way.words() + ": " + doing, before + done / ways.size());
                        }

                        @Override
                        public void hasDay() {
                            progress.hasDay();
                        }
                    };
            rows.add(plan(way, request, oneOfAll));
        }
        return rows;
    }

    /** Where each laydown stands, the job as stated among them. */
    public static Map<Row, Rank> rankLaydowns(List<Row> rows) {
        List<Row> laydowns =
                rows.stream()
                        .filter(row -> row.figures().isPresent())
                        .filter(
                                row ->
                                        row.way().kind() == Kind.AS_STATED
                                                || row.way().kind() == Kind.LAYDOWN)
                        .toList();
        Comparator<DayFigures> minutes =
                by(one -> one.leftOut().size()).thenComparing(by(DayFigures::flightS));
        Comparator<DayFigures> ground =
                by(one -> one.leftOut().size())
                        .thenComparing(by(one -> one.over().closedS()))
                        .thenComparing(by(one -> one.over().guardedS()))
                        .thenComparing(by(one -> one.over().countCrossings()));
        Map<Row, Rank> ranks = new HashMap<>();
        for (Row row : laydowns) {
            ranks.put(row, new Rank(place(row, laydowns, minutes), place(row, laydowns, ground)));
        }
        return ranks;
    }

    private static Comparator<DayFigures> by(ToDoubleFunction<DayFigures> figure) {
        return Comparator.comparingDouble(figure);
    }

    private static int place(Row row, List<Row> rows, Comparator<DayFigures> order) {
        DayFigures own = row.figures().orElseThrow();
        return 1
                + (int)
                        rows.stream()
                                .flatMap(one -> one.figures().stream())
                                .filter(one -> order.compare(one, own) < 0)
                                .count();
    }

    private static Row impossible(Alternative way, String why) {
        return new Row(way, Optional.empty(), why, false);
    }

    /** What stops it; a caution that comes before it in the list does not. */
    private static String first(List<Finding> findings) {
        return findings.stream()
                .filter(finding -> finding.severity() == Severity.STOP)
                .findFirst()
                .or(() -> findings.stream().findFirst())
                .map(finding -> finding.subject() + ": " + finding.message())
                .orElse("");
    }
}
