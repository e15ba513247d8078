package underhook.core.flown;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.job.LoadId;

/** Takes one tap after the other and keeps what they add up to. */
final class Tapping {
    /**
     * Two taps of one hook-up lie no further apart.
     *
     * @source PRACTICE two clocks that are off by half a minute each, and half a minute for the second finger; nobody
     *     hooks, brings back and hooks again within it
     */
    private static final Duration SAME_HOOK_UP = Duration.ofSeconds(90);

    private final TrainedHands hands;
    private final List<OpenLift> lifts = new ArrayList<>();
    private OptionalDouble lineM = OptionalDouble.empty();
    private boolean lineChecked;
    private int peopleAboard;

    /** Who first called each load free, of those that are not yet free. */
    private final Map<LoadId, String> freeSeenBy = new LinkedHashMap<>();

    private OptionalDouble fuelKg = OptionalDouble.empty();
    private final Spells engine = new Spells();
    private final Spells air = new Spells();
    private Optional<Instant> engineOffAt = Optional.empty();
    private int flights;
    private int takeOffs;
    private int landings;
    private int snags;
    private Instant lastAt = Instant.MIN;

    Tapping(TrainedHands hands) {
        this.hands = hands;
    }

    /** A lift while it is being flown. */
    private static final class OpenLift {
        private final Tap hooked;
        private final OptionalDouble lineM;
        private final List<LoadId> left;
        private final List<FlownLift.Off> off = new ArrayList<>();
        private boolean flown;
        private boolean aborted;
        private OptionalDouble massKg;

        OpenLift(Tap hooked, OptionalDouble lineM, boolean flown) {
            this.hooked = hooked;
            this.lineM = lineM;
            this.flown = flown;
            left = new ArrayList<>(hooked.loads());
            massKg = hooked.amount().massKg();
        }

        /** Whether this tap is a second one of the same hook-up, from another device. */
        boolean isHookedBy(Tap tap) {
            return !aborted
                    && tap.kind() == TapKind.HOOKED
                    && Set.copyOf(tap.loads()).equals(Set.copyOf(left))
                    && !tap.device().equals(hooked.device())
                    && !tap.at().isAfter(hooked.at().plus(SAME_HOOK_UP));
        }

        /** Read twice, the heavier counts. */
        void weigh(OptionalDouble readKg) {
            if (massKg.isEmpty() || readKg.orElse(0) > massKg.getAsDouble()) {
                massKg = readKg;
            }
        }

        FlownLift asLift() {
            return new FlownLift(hooked.loads(), hooked.at(), off, massKg, lineM, aborted);
        }
    }

    /** Times that something went on. */
    private static final class Spells {
        private Optional<Instant> since = Optional.empty();
        private double doneS;

        void begin(Instant at) {
            since = since.or(() -> Optional.of(at));
        }

        void end(Instant at) {
            doneS += since.map(from -> spanS(from, at)).orElse(0.0);
            since = Optional.empty();
        }

        boolean isOn() {
            return since.isPresent();
        }

        double upToS(Instant now) {
            return doneS + since.map(from -> spanS(from, now)).orElse(0.0);
        }

        private static double spanS(Instant from, Instant to) {
            return Duration.between(from, to).toMillis() / 1000.0;
        }
    }

    /** Why the day does not allow this tap; empty when it does. */
    Optional<Finding> refusal(Tap tap) {
        return switch (tap.kind()) {
            case HOOKED -> hookRefusal(tap);
            case OFF -> offRefusal(tap);
            case FREE_SEEN ->
                    calledFree(tap).isEmpty()
                            ? Refusals.outOfOrder(tap, "no load was set down that is not yet free")
                            : Optional.empty();
            case FREE_CONFIRMED -> confirmRefusal(tap);
            case ABORTED ->
                    onHook().isEmpty()
                            ? Refusals.outOfOrder(tap, "nothing is on the hook")
                            : Optional.empty();
            case LINE_ON -> lineOnRefusal(tap);
            case LINE_CHECKED ->
                    lineM.isEmpty()
                            ? Refusals.outOfOrder(tap, "the line is off")
                            : Optional.empty();
            case LINE_OFF -> lineOffRefusal(tap);
            case PEOPLE_ABOARD ->
                    lineM.isPresent() ? Refusals.lineWithPeople(tap) : Optional.empty();
            case PEOPLE_OUT ->
                    peopleAboard == 0
                            ? Refusals.outOfOrder(tap, "nobody is aboard")
                            : Optional.empty();
            case ENGINE_OFF, REFUELLED ->
                    onHook().isEmpty()
                            ? Optional.empty()
                            : Refusals.outOfOrder(tap, "a load hangs on the hook");
            case TAKE_OFF ->
                    isFlying()
                            ? Refusals.outOfOrder(tap, "the machine is in the air already")
                            : Optional.empty();
            case LANDING ->
                    air.isOn()
                            ? Optional.empty()
                            : Refusals.outOfOrder(tap, "the machine is on the ground");
            case ENGINE_ON, SNAGGED, BRIEFED, COUNTED, REPORTED, UNDONE -> Optional.empty();
        };
    }

    private Optional<Finding> hookRefusal(Tap tap) {
        if (tap.loads().isEmpty()) {
            return Refusals.outOfOrder(tap, "no load was named");
        }
        if (lineM.isEmpty()) {
            return Refusals.outOfOrder(tap, "the line is off");
        }
        if (peopleAboard > 0) {
            return Refusals.lineWithPeople(tap);
        }
        OptionalDouble planned = hands.findOtherLineM(tap, lineM.getAsDouble());
        if (planned.isPresent()) {
            return Refusals.otherLine(tap, planned.getAsDouble(), lineM.getAsDouble());
        }
        if (!lineChecked) {
            return Refusals.of(
                    FindingCode.LINE_NOT_CHECKED,
                    tap,
                    "The releases were not tried since this line was hung on the hook.");
        }
        if (hookedAlready(tap).isPresent()) {
            return Refusals.outOfOrder(
                    tap,
                    Refusals.named(onHook())
                            + (onHook().size() == 1 ? " was" : " were")
                            + " hooked a moment before by another's tap; it counts once");
        }
        if (!onHook().isEmpty()) {
            return Refusals.stillHangs(tap, onHook());
        }
        if (!notYetFree().isEmpty()) {
            return Refusals.notConfirmed(tap, notYetFree());
        }
        if (!hands.mayHook(tap.by())) {
            return Refusals.of(
                    FindingCode.HANDLER_ABSENT, tap, tap.by() + " was not trained to hook loads.");
        }
        return hands.findElsewhere(tap)
                .flatMap(
                        place ->
                                Refusals.of(
                                        FindingCode.HANDLER_ABSENT,
                                        tap,
                                        "The load waits at "
                                                + place
                                                + ", where nobody tapped it."));
    }

    private Optional<Finding> offRefusal(Tap tap) {
        for (LoadId load : tap.loads()) {
            if (!onHook().contains(load)) {
                return Refusals.outOfOrder(tap, load + " does not hang on the hook");
            }
        }
        return onHook().isEmpty()
                ? Refusals.outOfOrder(tap, "nothing is on the hook")
                : Optional.empty();
    }

    private Optional<Finding> confirmRefusal(Tap tap) {
        List<LoadId> called = calledFree(tap);
        if (called.isEmpty()) {
            return Refusals.outOfOrder(tap, "no load was set down that is not yet free");
        }
        List<LoadId> alone = called.stream().filter(load -> !isSecondWord(load, tap)).toList();
        return alone.isEmpty() ? Optional.empty() : Refusals.notConfirmed(tap, alone);
    }

    /** The loads a word of these is about: those it names, else all that are down and not yet free. */
    private List<LoadId> calledFree(Tap tap) {
        return notYetFree().stream()
                .filter(load -> tap.loads().isEmpty() || tap.loads().contains(load))
                .toList();
    }

    /** One person's word twice stays one person's word. */
    private boolean isSecondWord(LoadId load, Tap tap) {
        String first = freeSeenBy.get(load);
        return first != null && !first.equals(tap.by());
    }

    private Optional<Finding> lineOnRefusal(Tap tap) {
        if (peopleAboard > 0) {
            return Refusals.lineWithPeople(tap);
        }
        return tap.amount().lengthM().isEmpty()
                ? Refusals.outOfOrder(tap, "nobody said how long the line is")
                : Optional.empty();
    }

    private Optional<Finding> lineOffRefusal(Tap tap) {
        if (lineM.isEmpty()) {
            return Refusals.outOfOrder(tap, "the line is off already");
        }
        if (!onHook().isEmpty()) {
            return Refusals.stillHangs(tap, onHook());
        }
        return notYetFree().isEmpty() ? Optional.empty() : Refusals.notConfirmed(tap, notYetFree());
    }

    /** Takes the tap as what happened, allowed or not. */
    void take(Tap tap) {
        lastAt = tap.at();
        switch (tap.kind()) {
            case ENGINE_ON -> {
                endAtShutdown();
                engine.begin(tap.at());
            }
            case ENGINE_OFF -> {
                engine.end(tap.at());
                // Told twice, it was off from the first on.
                engineOffAt = engineOffAt.or(() -> Optional.of(tap.at()));
            }
            case TAKE_OFF -> {
                takeOffs += isFlying() ? 0 : 1;
                fly(tap.at());
            }
            case LANDING -> {
                landings += air.isOn() ? 1 : 0;
                air.end(engineOffAt.orElse(tap.at()));
            }
            case LINE_ON -> {
                lineM = tap.amount().lengthM();
                lineChecked = false;
            }
            case LINE_CHECKED -> lineChecked = true;
            case LINE_OFF -> {
                lineM = OptionalDouble.empty();
                lineChecked = false;
            }
            case PEOPLE_ABOARD -> peopleAboard += Math.max(1, tap.amount().people());
            case PEOPLE_OUT -> peopleAboard = 0;
            case HOOKED ->
                    hookedAlready(tap)
                            .ifPresentOrElse(
                                    lift -> lift.weigh(tap.amount().massKg()),
                                    () -> lifts.add(new OpenLift(tap, lineM, isFlying())));
            case OFF -> setDown(tap);
            case FREE_SEEN ->
                    calledFree(tap).forEach(load -> freeSeenBy.putIfAbsent(load, tap.by()));
            case FREE_CONFIRMED -> confirm(tap);
            case ABORTED -> giveUp();
            case REFUELLED -> fuelKg = tap.amount().massKg();
            case SNAGGED -> {
                snags++;
                // A jolt already taken: nothing is lifted on this line before somebody looked at
                // it.
                lineChecked = false;
            }
            case BRIEFED, COUNTED, REPORTED, UNDONE -> {}
        }
    }

    private Optional<OpenLift> hookedAlready(Tap tap) {
        return lifts.stream().filter(lift -> lift.isHookedBy(tap)).findFirst();
    }

    private boolean isFlying() {
        return air.isOn() && engineOffAt.isEmpty();
    }

    /** Nobody flies with the engine off: the landing before it was not tapped. */
    private void endAtShutdown() {
        engineOffAt.ifPresent(air::end);
        engineOffAt = Optional.empty();
    }

    private void fly(Instant from) {
        if (!isFlying()) {
            // What is told of a lift after the shutdown that ended it is no flight after it.
            Optional<Instant> shutdown = engineOffAt.filter(from::isBefore);
            endAtShutdown();
            flights++;
            air.begin(from);
            engineOffAt = shutdown;
        }
        lifts.forEach(lift -> lift.flown = true);
    }

    /** What was hooked and is off the hook was flown, whether or not somebody tapped the take-off. */
    private void flyWith(OpenLift lift) {
        if (!lift.flown) {
            fly(lift.hooked.at());
        }
    }

    private void setDown(Tap tap) {
        OpenLift lift = lastOpen();
        if (lift == null) {
            return;
        }
        List<LoadId> down =
                tap.loads().isEmpty() ? lift.left.stream().limit(1).toList() : tap.loads();
        flyWith(lift);
        for (LoadId load : down) {
            if (lift.left.remove(load)) {
                lift.off.add(new FlownLift.Off(load, tap.at(), Optional.empty()));
                freeSeenBy.clear();
            }
        }
    }

    private void confirm(Tap tap) {
        Set<LoadId> freed =
                calledFree(tap).stream()
                        .filter(load -> isSecondWord(load, tap))
                        .collect(Collectors.toUnmodifiableSet());
        for (OpenLift lift : lifts) {
            lift.off.replaceAll(
                    off ->
                            freed.contains(off.load())
                                    ? new FlownLift.Off(
                                            off.load(),
                                            off.at(),
                                            off.freeAt().or(() -> Optional.of(tap.at())))
                                    : off);
        }
        freeSeenBy.keySet().removeAll(freed);
    }

    private void giveUp() {
        OpenLift lift = lastOpen();
        if (lift != null) {
            flyWith(lift);
            lift.aborted = true;
            lift.left.clear();
        }
    }

    private @Nullable OpenLift lastOpen() {
        for (int i = lifts.size() - 1; i >= 0; i--) {
            if (!lifts.get(i).aborted && !lifts.get(i).left.isEmpty()) {
                return lifts.get(i);
            }
        }
        return null;
    }

    private List<LoadId> onHook() {
        return lifts.stream()
                .filter(lift -> !lift.aborted)
                .flatMap(lift -> lift.left.stream())
                .toList();
    }

    private List<LoadId> notYetFree() {
        return lifts.stream()
                .flatMap(lift -> lift.off.stream())
                .filter(off -> off.freeAt().isEmpty())
                .map(FlownLift.Off::load)
                .toList();
    }

    List<FlownLift> lifts() {
        return lifts.stream().map(OpenLift::asLift).toList();
    }

    MachineSums sums() {
        return new MachineSums(
                engine.upToS(lastAt),
                air.upToS(engineOffAt.orElse(lastAt)),
                flights,
                takeOffs,
                landings,
                lifts.size(),
                snags);
    }

    Standing now() {
        return new Standing(
                engine.isOn(),
                air.isOn(),
                lineM,
                lineChecked,
                peopleAboard,
                onHook(),
                notYetFree(),
                freeSeenBy.values().stream().findFirst(),
                fuelKg);
    }
}
