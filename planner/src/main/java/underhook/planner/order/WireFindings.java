package underhook.planner.order;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.geo.PlanePoint;
import underhook.core.job.MapFeature;
import underhook.core.job.Wire;
import underhook.core.job.WireBufferRule;
import underhook.core.plan.Leg;
import underhook.core.plan.PathPoint;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.wire.WireBuffers;

/** What a person must know of wires and masts beside the ways that are flown, each said once. */
final class WireFindings {
    /** A mast within this distance of a way is said. @source PRACTICE as for wires */
    private static final double MAST_NEAR_M = Leg.WirePass.LISTED_M;

    private final DayModel model;
    private final Confirmations confirmations;
    private final Set<String> unconfirmed = new HashSet<>();
    private final List<Finding> all = new ArrayList<>();

    /** A leg and what it passes. */
    private record Passed(Leg leg, Leg.WirePass pass) {
        double marginM() {
            return pass.leastM() - pass.needM();
        }

        String name() {
            return leg.from() + "-" + leg.to();
        }
    }

    WireFindings(DayModel model, List<Finding> saidBefore) {
        this.model = model;
        this.confirmations = Confirmations.of(model.job);
        saidBefore.stream()
                .filter(finding -> finding.code() == FindingCode.HAZARD_UNCONFIRMED)
                .forEach(finding -> unconfirmed.add(finding.subject()));
    }

    List<Finding> list(List<Step> steps) {
        List<Leg> legs =
                steps.stream()
                        .flatMap(
                                step ->
                                        step
                                                .rotation()
                                                .map(Rotation::legs)
                                                .orElse(step.legs())
                                                .stream())
                        .toList();
        wires(legs);
        masts(legs);
        confirmations.listRest().stream()
                .filter(finding -> unconfirmed.add(finding.subject()))
                .forEach(all::add);
        return List.copyOf(all);
    }

    private void wires(List<Leg> legs) {
        Map<String, Passed> governing = new TreeMap<>();
        for (Leg leg : legs) {
            for (Leg.WirePass pass : leg.wires()) {
                governing.merge(
                        pass.wire(),
                        new Passed(leg, pass),
                        (old, next) -> next.marginM() < old.marginM() ? next : old);
            }
        }
        for (Wire wire : model.job.wires()) {
            Passed passed = governing.get(wire.id());
            if (passed != null) {
                near(wire, passed);
                assumed(wire, passed);
                unconfirmed(wire.id(), wire.source(), passed.name() + " passes it");
            }
            ends(wire, legs);
        }
    }

    private void ends(Wire wire, List<Leg> legs) {
        List<WireEnd> open = WireEnd.listOpen(wire, model.job, model.ground.frame());
        double leastM = Double.POSITIVE_INFINITY;
        String name = "";
        for (Leg leg : open.isEmpty() ? List.<Leg>of() : legs) {
            double beyondM = WireEnd.leastBeyondM(open, plane(leg));
            if (beyondM < leastM) {
                leastM = beyondM;
                name = leg.from() + "-" + leg.to();
            }
        }
        if (leastM <= WireEnd.GOES_ON_M) {
            String beyond = Figures.text(Math.floor(leastM), 0);
            all.add(
                    new Finding(
                            FindingCode.WIRE_END,
                            Severity.CAUTION,
                            wire.id(),
                            beyond,
                            Figures.text(WireEnd.GOES_ON_M, 0),
                            "m",
                            wire.source(),
                            name
                                    + " goes round an end of this wire, "
                                    + beyond
                                    + " m beyond it. If the file only ends there and the wire does"
                                    + " not, the way crosses it. Find out how it goes on, enter it"
                                    + " and plan anew."));
        }
    }

    private void near(Wire wire, Passed passed) {
        boolean close = passed.marginM() < wire.lateralM();
        all.add(
                new Finding(
                        FindingCode.WIRE_NEAR,
                        close ? Severity.CAUTION : Severity.NOTE,
                        wire.id(),
                        Figures.text(passed.pass().leastM(), 1),
                        Figures.text(passed.pass().needM(), 1),
                        "m",
                        wire.source(),
                        "Of all ways "
                                + passed.name()
                                + (passed.leg().carrying().isEmpty()
                                        ? ", empty,"
                                        : " with " + passed.leg().carrying().get(0))
                                + " comes nearest to what this wire needs: "
                                + Figures.text(passed.pass().leastM(), 1)
                                + " m from anywhere it can hang"
                                + (close
                                        ? ", and what is left is less than its position may be off."
                                        : ".")
                                + rule(wire)));
    }

    private String rule(Wire wire) {
        boolean table = model.rules.margins().wireBuffers() != WireBufferRule.OWN;
        if (!table || !WireBuffers.counts(wire)) {
            return "";
        }
        return " Its " + voltageClass(wire) + " counts by the " + WireBuffers.NOTE + ".";
    }

    private static String voltageClass(Wire wire) {
        if (wire.voltageV() <= 0) {
            return "voltage is not stated, so the largest class";
        }
        return wire.voltageV() > WireBuffers.LARGEST_V
                ? "voltage is above the last class, which"
                : "voltage";
    }

    private void assumed(Wire wire, Passed passed) {
        if (passed.pass().assumed()) {
            boolean height = wire.hanging().heightEstimated();
            all.add(
                    new Finding(
                            FindingCode.WIRE_ASSUMED,
                            Severity.CAUTION,
                            wire.id(),
                            "",
                            "",
                            "",
                            wire.source(),
                            (height ? "Its height was" : "Its sag was")
                                    + " never measured; a default on the safe side is used. "
                                    + passed.name()
                                    + " passes it. Look at it before flying."));
        }
    }

    private void unconfirmed(String id, String source, String near) {
        if (unconfirmed.add(id)) {
            confirmations.findUnconfirmed(id, source, near).ifPresent(all::add);
        }
    }

    private void masts(List<Leg> legs) {
        for (MapFeature mast : model.job.features()) {
            if (mast.kind() != MapFeature.Kind.MAST) {
                continue;
            }
            List<PlanePoint> outline =
                    mast.outline().stream().map(at -> model.ground.frame().toPlane(at)).toList();
            double leastM = Double.POSITIVE_INFINITY;
            String name = "";
            for (Leg leg : legs) {
                double apartM = model.finder().distanceM(outline, plane(leg));
                if (apartM < leastM) {
                    leastM = apartM;
                    name = leg.from() + "-" + leg.to();
                }
            }
            if (leastM <= MAST_NEAR_M) {
                mast(mast, name + " passes " + Figures.text(Math.floor(leastM), 0) + " m away");
            }
        }
    }

    private List<PlanePoint> plane(Leg leg) {
        return leg.path().stream()
                .map(PathPoint::position)
                .map(at -> model.ground.frame().toPlane(at))
                .toList();
    }

    private void mast(MapFeature mast, String near) {
        boolean unknown = mast.heightM().isEmpty();
        if (unknown || mast.heightEstimated()) {
            all.add(
                    new Finding(
                            FindingCode.HEIGHT_ASSUMED,
                            Severity.CAUTION,
                            mast.id(),
                            unknown ? "" : Figures.text(mast.heightM().getAsDouble(), 0),
                            "",
                            unknown ? "" : "m",
                            mast.source(),
                            (unknown
                                            ? "Its height is not known: it counts as endlessly high."
                                            : "Its height was never measured.")
                                    + " "
                                    + near
                                    + ". Look at it, and for guys, before flying."));
        }
        unconfirmed(mast.id(), mast.source(), near);
    }
}
