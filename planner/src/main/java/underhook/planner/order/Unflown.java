package underhook.planner.order;

import underhook.core.finding.FindingCode;
import underhook.core.job.PlaceId;
import underhook.planner.search.DayTable;

/** A trip of a table that a day does not fly. */
record Unflown(DayTable table, int k, Trip trip) {
    record Reason(FindingCode code, String message) {}

    /** Why, and what would have to be entered. */
    Reason reason(boolean cut) {
        if (table.hasNobodyToHook(k)) {
            return new Reason(
                    FindingCode.NO_HANDLER,
                    "Nobody who stays at its pick-up "
                            + from()
                            + " may hook. Perhaps a crew that starts and stays there, with the"
                            + " role hook.");
        }
        if (table.hasNobodyToReceive(k)) {
            return new Reason(
                    FindingCode.NO_CREW,
                    "Nobody who stays at "
                            + to()
                            + " may receive. Perhaps a crew that starts and stays there, with"
                            + " the role receive.");
        }
        if (table.needsTwoTeams(k) && !table.isReached(k) && !cut) {
            return new Reason(
                    FindingCode.NO_CREW,
                    "Nobody who stays at "
                            + from()
                            + " hooks it on, so one crew would have to come there and another to "
                            + to()
                            + ", on foot or by air; no two can. Perhaps somebody who stays at "
                            + from()
                            + ", with the role hook and without guy.");
        }
        if (!table.isReached(k) && !cut) {
            boolean hooks = table.needsTeamAtPickUp(k);
            return new Reason(
                    FindingCode.NO_CREW,
                    "No crew that may "
                            + (hooks ? "hook" : trip.standsUp() ? "receive and guy" : "receive")
                            + " can come to "
                            + (hooks ? from() : to())
                            + ", on foot or by air. Perhaps such a crew that serves it, a landing"
                            + " place with a way on foot to it, or somebody who stays there.");
        }
        return cut
                ? new Reason(
                        FindingCode.SEARCH_CUT,
                        "The search was stopped before a day was found in which it fits. Perhaps"
                                + " more time.")
                : new Reason(
                        FindingCode.NO_ROOM_IN_DAY,
                        "No day was found in which it fits: wind, light, crews, fuel or duty end first."
                                + (table.hasFuel()
                                        ? ""
                                        : " No place keeps fuel that somebody there may fill:"
                                                + " what is aboard in the morning is all there"
                                                + " is.")
                                + " This is a search's answer, not a proof.");
    }

    private PlaceId from() {
        return trip.loads().get(0).from();
    }

    private PlaceId to() {
        return trip.loads().get(0).to();
    }
}
