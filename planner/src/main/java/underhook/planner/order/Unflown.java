package underhook.planner.order;

import java.util.List;
import java.util.Optional;
import underhook.core.finding.FindingCode;
import underhook.core.job.Crew;
import underhook.core.job.PlaceId;
import underhook.planner.search.DayTable;

/** A trip of a table that a day does not fly. */
record Unflown(DayTable table, int k, Trip trip, Boarding boarding) {
    /** What helps whom the time cut short: one word of it stands in the shell, the other on the desk. */
    static final String MORE_TIME =
            "Perhaps more time: a higher --seconds, on the desk a higher \"at most seconds\".";

    record Reason(FindingCode code, String message) {}

    /** Why, and what would have to be entered. */
    Reason reason(boolean cut) {
        Optional<Reason> nobody = nobody();
        if (nobody.isPresent()) {
            return nobody.get();
        }
        return cut
                ? new Reason(
                        FindingCode.SEARCH_CUT,
                        "The search was stopped before a day was found in which it fits. "
                                + MORE_TIME)
                : noFlight().orElseGet(this::noRoom);
    }

    private Reason noRoom() {
        return new Reason(
                FindingCode.NO_ROOM_IN_DAY,
                "No day was found in which it fits: wind, light, crews, fuel or duty end first."
                        + (table.hasFuel()
                                ? ""
                                : " No place keeps fuel that somebody there may fill: what is"
                                        + " aboard in the morning is all there is.")
                        + " This is a search's answer, not a proof.");
    }

    /** That no way was found from where the machine begins, or for people to where they are needed. */
    private Optional<Reason> noFlight() {
        Optional<Reason> found = shutIn().or(this::nobodyFlown);
        // What was given up for want of time shows nothing.
        return boarding.model().legs().isCut() ? Optional.empty() : found;
    }

    private Optional<Reason> shutIn() {
        PlaceId start = boarding.model().job.machineStart();
        if (start.equals(from()) || boarding.fliesAnywhere(boarding.model().place(start))) {
            return Optional.empty();
        }
        return because(
                FindingCode.NO_WAY,
                "The machine begins the day at "
                        + start
                        + ", and no way was found from there to any other place at any hour with the"
                        + " line off. Perhaps another place where it begins, or a permission for what"
                        + " lies between.");
    }

    private Optional<Reason> nobodyFlown() {
        for (boolean hooks : new boolean[] {true, false}) {
            boolean asked = hooks ? table.needsTeamAtPickUp(k) : table.needsTeamAtDrop(k);
            List<String> none =
                    asked
                            ? boarding.listNoWays(
                                    hooks ? from() : to(),
                                    hooks ? Crew.Role.HOOK : Crew.Role.RECEIVE)
                            : List.of();
            if (!none.isEmpty()) {
                return because(
                        FindingCode.NO_CREW,
                        "Whoever may "
                                + (hooks ? "hook" : receives())
                                + " at "
                                + (hooks ? from() : to())
                                + " would be flown from "
                                + String.join(" or ", none)
                                + ", and no way was found there at any hour. Perhaps a permission for"
                                + " what lies between, another landing place, a way on foot, or"
                                + " somebody who stays there.");
            }
        }
        return Optional.empty();
    }

    /** That nobody can do what it takes, whatever the order; empty when somebody can. */
    Optional<Reason> nobody() {
        if (table.hasNobodyToHook(k)) {
            return because(
                    FindingCode.NO_HANDLER,
                    "Nobody who stays at its pick-up "
                            + from()
                            + " may hook. Perhaps a crew that starts and stays there, with the"
                            + " role hook.");
        }
        if (table.hasNobodyToReceive(k)) {
            return because(
                    FindingCode.NO_CREW,
                    "Nobody who stays at "
                            + to()
                            + " may receive. Perhaps a crew that starts and stays there, with"
                            + " the role receive.");
        }
        if (!table.isReached(k)) {
            return because(FindingCode.NO_CREW, unreached());
        }
        if (table.isHookedTooLate(k)) {
            return because(
                    table.needsTeamAtPickUp(k) ? FindingCode.NO_CREW : FindingCode.NO_HANDLER,
                    tooLate(true));
        }
        return table.isReceivedTooLate(k)
                ? because(FindingCode.NO_CREW, tooLate(false))
                : Optional.empty();
    }

    private static Optional<Reason> because(FindingCode code, String message) {
        return Optional.of(new Reason(code, message));
    }

    private String unreached() {
        if (table.needsTwoTeams(k)) {
            return "Nobody who stays at "
                    + from()
                    + " hooks it on, so one crew would have to come there and another to "
                    + to()
                    + ", on foot or by air; no two can. Perhaps somebody who stays at "
                    + from()
                    + ", with the role hook and without guy.";
        }
        boolean hooks = table.needsTeamAtPickUp(k);
        PlaceId to = hooks ? from() : to();
        List<String> unflown = boarding.listUnflown(to, hooks ? Crew.Role.HOOK : Crew.Role.RECEIVE);
        if (!unflown.isEmpty()) {
            return nobodyComes(hooks)
                    + String.join(" ", unflown)
                    + " Perhaps fewer people at once, other seats, a crew that walks, or somebody"
                    + " who stays there.";
        }
        List<String> closed = boarding.listClosed(to, hooks ? Crew.Role.HOOK : Crew.Role.RECEIVE);
        if (!closed.isEmpty()) {
            return nobodyComes(hooks)
                    + String.join(" ", closed)
                    + " Perhaps another place of kind landing with a way on foot to it, level and"
                    + " clear of trees, a crew that walks, or somebody who stays there.";
        }
        return nobodyComes(hooks)
                + "Perhaps such a crew that serves it, a landing"
                + " place with a way on foot to it, or somebody who stays there.";
    }

    private String nobodyComes(boolean hooks) {
        return "No crew that may "
                + (hooks ? "hook" : receives())
                + " can come to "
                + (hooks ? from() : to())
                + ", on foot or by air. ";
    }

    private String tooLate(boolean hooks) {
        return "Whoever may "
                + (hooks ? "hook" : receives())
                + " can be at "
                + (hooks ? from() : to())
                + " only when the wind has closed it or the day is over. Perhaps such a crew that"
                + " comes earlier.";
    }

    private String receives() {
        return trip.standsUp() ? "receive and guy" : "receive";
    }

    private PlaceId from() {
        return trip.loads().get(0).from();
    }

    private PlaceId to() {
        return trip.loads().get(0).to();
    }
}
