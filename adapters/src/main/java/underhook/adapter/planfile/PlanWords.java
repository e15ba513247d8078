package underhook.adapter.planfile;

import java.util.Arrays;
import java.util.Optional;
import underhook.core.plan.PlaceRoom;
import underhook.core.plan.RefusedComfort;
import underhook.core.plan.ReleaseLook;
import underhook.core.plan.StepKind;

/** What both directions must agree on. */
final class PlanWords {
    static final String FILE_NAME = "plan.json";
    static final int VERSION = 1;

    /** Between the word of a limit and the place where it holds. */
    static final String AT = " at ";

    /** Decimals of values in minutes, knots, degrees and of fuel: far finer than anything is judged by. */
    static final int FINE = 6;

    /** Decimals of masses and lengths: a gram, a millimetre. */
    static final int COARSE = 3;

    /** Decimals of longitude and latitude: a centimetre. */
    static final int DEGREES = 7;

    private PlanWords() {}

    static String word(StepKind kind) {
        return switch (kind) {
            case ROTATION -> "rotation";
            case POSITION -> "position";
            case CREW_MOVE -> "crewMove";
            case REFUEL -> "refuel";
            case LINE_CHANGE -> "lineChange";
            case BREAK -> "break";
            case WAIT -> "wait";
        };
    }

    static Optional<StepKind> findKind(String word) {
        return Arrays.stream(StepKind.values()).filter(k -> word(k).equals(word)).findFirst();
    }

    static String word(ReleaseLook.Use use) {
        return switch (use) {
            case CLOSED -> "closed";
            case GUARDED -> "guarded";
            case OPEN -> "open";
            case NAMED -> "named";
        };
    }

    static Optional<ReleaseLook.Use> findUse(String word) {
        return Arrays.stream(ReleaseLook.Use.values())
                .filter(use -> word(use).equals(word))
                .findFirst();
    }

    static Optional<RefusedComfort.Comfort> findComfort(String word) {
        return Arrays.stream(RefusedComfort.Comfort.values())
                .filter(comfort -> comfort.word().equals(word))
                .findFirst();
    }

    /** Name of the list of sectors of one answer. */
    static String sectorsField(PlaceRoom.Fit fit) {
        return switch (fit) {
            case FREE -> "freeTrueDeg";
            case NEAR -> "nearTrueDeg";
            case REFUSED -> "refusedTrueDeg";
        };
    }
}
