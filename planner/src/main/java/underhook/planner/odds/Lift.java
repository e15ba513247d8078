package underhook.planner.odds;

import java.util.List;
import underhook.core.job.LoadKind;
import underhook.core.job.Place;
import underhook.core.plan.Rotation;

/**
 * A rotation's moments and windows.
 *
 * @param step number of its step in the plan, from 0
 * @param hooked moment of the hook-up
 * @param released moment of the first release
 * @param done moment of the last release
 * @param hookWindow when the wind lets it be hooked up
 * @param dropWindow when the wind lets it be let go
 * @param zoneWindow from when zones let it be hooked up, and until when let go
 */
record Lift(
        int step,
        Rotation rotation,
        List<LoadKind> kinds,
        Place from,
        Place to,
        int hooked,
        int released,
        int done,
        Windows.Window hookWindow,
        Windows.Window dropWindow,
        Windows.Window zoneWindow) {
    Lift {
        kinds = List.copyOf(kinds);
    }

    boolean standsUp() {
        return kinds.stream().anyMatch(LoadKind::standsUp);
    }

    boolean lastAtPlace() {
        return kinds.stream().anyMatch(LoadKind::lastAtPlace);
    }

    /** How long before its release people and ground are ready for it, as planned, s. */
    double standingUpS() {
        return standsUp() ? kinds.stream().mapToDouble(LoadKind::setDownS).max().orElse(0) : 0;
    }

    /** From when it begins to be hooked up until it is, as planned, s. */
    double hookUpS() {
        return kinds.stream().mapToDouble(LoadKind::hookUpS).max().orElse(0);
    }

    double busyAfterS() {
        return kinds.stream().mapToDouble(LoadKind::busyAfterS).max().orElse(0);
    }

    double readyAfterS() {
        return kinds.stream().mapToDouble(LoadKind::readyAfterS).max().orElse(0);
    }

    /** When the wind or a zone closes it wherever it is, s; infinity when they do not. */
    double closesS() {
        return Math.min(Math.min(hookWindow.closesS(), dropWindow.closesS()), zoneWindow.closesS());
    }

    /** How long before its windows close it is hooked up and let go on such a day, the less of the two, s. */
    double slackS(double[] timesS, double windLaterS) {
        double windS =
                windLaterS
                        + Math.min(
                                hookWindow.closesS() - timesS[hooked],
                                dropWindow.closesS() - timesS[done]);
        return Math.min(windS, zoneWindow.closesS() - timesS[done]);
    }

    /** Latest hook-up on that day with which it is let go inside its windows, s. */
    double lastHookS(double[] timesS, double windLaterS) {
        double lastsS = timesS[done] - timesS[hooked];
        double windS = windLaterS + Math.min(hookWindow.closesS(), dropWindow.closesS() - lastsS);
        return Math.min(windS, zoneWindow.closesS() - lastsS);
    }
}
