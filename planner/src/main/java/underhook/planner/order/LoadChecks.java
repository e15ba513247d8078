package underhook.planner.order;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.job.Crew;
import underhook.core.job.Load;
import underhook.core.job.MassStatus;
import underhook.core.job.Place;
import underhook.core.pole.Guys;

/** What is wrong with a load by itself, whatever else flies and at any hour. */
final class LoadChecks {
    /**
     * What there is to say of a load.
     *
     * @param said whether it stays behind or not
     * @param stop why it stays behind
     */
    record Checked(List<Finding> said, Optional<Finding> stop) {}

    /** What site crews call fuels, gases, explosives, acids and cells. @source PRACTICE */
    private static final Pattern HINTS =
            Pattern.compile(
                    "\\b(?:petrol|gasoline|diesel|kerosene|jet a-?1|fuel|propane|butane|acetylene|oxygen|gas"
                            + "|explosives?|detonators?|blasting caps?|dynamite|batter(?:y|ies)|solvents?|acid"
                            + "|flares?|UN ?[0-9]{4}|benzin|kerosin|kraftstoff|treibstoff|propan|butan|acetylen"
                            + "|sauerstoff|sprengstoff|zünder|batterien?|akkus?|säure|lösungsmittel)\\b",
                    Pattern.CASE_INSENSITIVE
                            | Pattern.UNICODE_CASE
                            | Pattern.UNICODE_CHARACTER_CLASS);

    private final DayModel model;

    LoadChecks(DayModel model) {
        this.model = model;
    }

    Checked check(Load load) {
        if (load.massStatus() == MassStatus.MISSING) {
            return new Checked(List.of(), Optional.of(massMissing(load)));
        }
        List<Finding> said = new ArrayList<>();
        if (isPole(load)) {
            said.addAll(PoleMasses.findings(load));
        }
        if (load.massStatus() == MassStatus.ESTIMATED) {
            said.add(massEstimated(load));
        }
        if (load.isDangerous()) {
            said.add(dangerousGoods(load));
        }
        if (load.dangerousGoods().isEmpty()) {
            HINTS.matcher(load.remarks())
                    .results()
                    .findFirst()
                    .ifPresent(word -> said.add(perhapsDangerous(load, word.group())));
        }
        Optional<Finding> stop = findEndStop(load).or(() -> findHookStop(load));
        if (isPole(load) && stop.isEmpty()) {
            stop = findNobodyToGuy(load).or(() -> findGuyStop(load, said));
        }
        return new Checked(said, stop);
    }

    private boolean isPole(Load load) {
        return model.job.getKind(load.kind()).standsUp();
    }

    private Finding massMissing(Load load) {
        return Finding.of(
                FindingCode.MASS_MISSING,
                Severity.STOP,
                load.id().value(),
                "loads",
                "No mass is stated. It stays behind until it is weighed."
                        + (isPole(load) ? PoleMasses.band(load) : ""));
    }

    /** A word in the remarks is no class of goods; it is only asked whether somebody looked. */
    private static Finding perhapsDangerous(Load load, String word) {
        return Finding.of(
                FindingCode.DANGEROUS_GOODS,
                Severity.CAUTION,
                load.id().value(),
                "PRACTICE",
                "Its remarks speak of \""
                        + word
                        + "\", and nothing of dangerous goods is stated. Perhaps it is some: state it under"
                        + " dangerous_goods, so that nothing rides with it and whoever handles it is told.");
    }

    /** @source EASA-HESLO dangerous goods to a place where nobody is need an exemption */
    private static Finding dangerousGoods(Load load) {
        return Finding.of(
                FindingCode.DANGEROUS_GOODS,
                Severity.CAUTION,
                load.id().value(),
                "EASA-HESLO",
                "As listed: "
                        + load.dangerousGoods()
                        + ". No plan approves it: papers, packing and the operator's approval come first,"
                        + " and an exemption where nobody receives it. Nothing rides with it.");
    }

    private Finding massEstimated(Load load) {
        String plannedKg = Figures.text(model.liftMassKg(load), 0);
        return new Finding(
                FindingCode.MASS_ESTIMATED,
                Severity.CAUTION,
                load.id().value(),
                Figures.text(load.massKg().orElseThrow(), 1),
                plannedKg,
                "kg",
                "rules",
                "The mass is estimated; planned with "
                        + plannedKg
                        + " kg for lift. Weigh it before it flies.");
    }

    private Optional<Finding> findEndStop(Load load) {
        for (Place end : List.of(model.job.getPlace(load.from()), model.job.getPlace(load.to()))) {
            if (!end.agreed()) {
                return stop(
                        FindingCode.PLACE_UNUSED,
                        load,
                        "places",
                        end.id() + " is not agreed with its owner.");
            }
            if (!model.isKnown(model.place(end.id()))) {
                return stop(
                        FindingCode.OUTSIDE_TERRAIN,
                        load,
                        "terrain",
                        end.id() + " lies outside the known terrain.");
            }
        }
        return Optional.empty();
    }

    private Optional<Finding> findHookStop(Load load) {
        double lineKg =
                model.machine.lines().stream().mapToDouble(line -> line.massKg()).min().orElse(0);
        double onHookKg = Math.ceil(model.liftMassKg(load)) + lineKg;
        double limitKg = model.machine.hookLimitKg();
        if (onHookKg <= limitKg) {
            return Optional.empty();
        }
        return Optional.of(
                new Finding(
                        FindingCode.HOOK_LIMIT,
                        Severity.STOP,
                        load.id().value(),
                        Figures.text(onHookKg, 0),
                        Figures.text(limitKg, 0),
                        "kg",
                        "machine",
                        "With the lightest line "
                                + Figures.text(onHookKg, 0)
                                + " kg hang on the hook, which may carry "
                                + Figures.text(limitKg, 0)
                                + (isPole(load)
                                        ? " kg. Perhaps a machine with a stronger hook."
                                        : " kg. Perhaps it can be split.")));
    }

    /** Teams are sent to sites alone; elsewhere who stays guys, and others who stay hook and receive meanwhile. */
    private Optional<Finding> findNobodyToGuy(Load load) {
        Place place = model.job.getPlace(load.to());
        if (place.isSite()) {
            return Optional.empty();
        }
        List<Crew> guying = staying(place, Crew.Role.GUY);
        if (guying.isEmpty()) {
            return stop(
                    FindingCode.NO_CREW,
                    load,
                    "crews",
                    "It is stood up at "
                            + load.to()
                            + ", where no crew is sent and nobody stays to guy it. Perhaps"
                            + " a crew that stays there, or a kind that lies.");
        }
        boolean hooks =
                model.job.loads().stream().anyMatch(other -> other.from().equals(load.to()));
        for (Crew.Role role : List.of(Crew.Role.RECEIVE, Crew.Role.HOOK)) {
            boolean needed = role == Crew.Role.RECEIVE || hooks;
            if (needed && isDoneByWhoeverGuys(staying(place, role), guying)) {
                return stop(
                        FindingCode.NO_CREW,
                        load,
                        "crews",
                        "It is stood up at "
                                + load.to()
                                + ", where nobody stays to "
                                + (role == Crew.Role.HOOK ? "hook" : "receive")
                                + " but who guys it meanwhile. Perhaps another crew that stays"
                                + " there, or a kind that lies.");
            }
        }
        return Optional.empty();
    }

    private List<Crew> staying(Place place, Crew.Role role) {
        return model.job.crews().stream()
                .filter(crew -> crew.stays() && crew.start().equals(place.id()))
                .filter(crew -> crew.roles().contains(role))
                .toList();
    }

    private static boolean isDoneByWhoeverGuys(List<Crew> doing, List<Crew> guying) {
        return doing.stream().allMatch(one -> guying.stream().allMatch(one::equals));
    }

    private Optional<Finding> findGuyStop(Load load, List<Finding> said) {
        Place place = model.job.getPlace(load.to());
        if (place.guyAzimuthsTrueRad().isEmpty()) {
            said.add(
                    Finding.of(
                            FindingCode.GUY_GAP_WIDE,
                            Severity.CAUTION,
                            place.id().value(),
                            "places",
                            "No guys are planned for the pole " + load.id() + "."));
            return Optional.empty();
        }
        Guys guys = new Guys(place.guyAzimuthsTrueRad());
        said.addAll(guys.findings(place.id().value()));
        return guys.holds()
                ? model.poles().findStop(load, model.job.getKind(load.kind()))
                : Optional.of(gap(load, place, guys));
    }

    private static Finding gap(Load load, Place place, Guys guys) {
        String gapDeg = Figures.text(Math.toDegrees(guys.largestGapRad()), 0);
        String proposal =
                guys.proposeHolding().azimuthsTrueRad().stream()
                        .map(azimuth -> Figures.text(Math.toDegrees(azimuth), 0) + "°")
                        .collect(Collectors.joining(", "));
        return new Finding(
                FindingCode.GUY_GAP,
                Severity.STOP,
                load.id().value(),
                gapDeg,
                "180",
                "°",
                "places",
                "The guys at "
                        + place.id()
                        + " leave a gap of "
                        + gapDeg
                        + "°; they do not hold the pole in every direction. Perhaps at "
                        + proposal
                        + " true.");
    }

    private static Optional<Finding> stop(
            FindingCode code, Load load, String source, String message) {
        return Optional.of(Finding.of(code, Severity.STOP, load.id().value(), source, message));
    }
}
