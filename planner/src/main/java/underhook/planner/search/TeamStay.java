package underhook.planner.search;

/** A team at a place, or on its way to it. */
public record TeamStay(int team, int place, long fromS, long untilS, Doing doing) {
    /** What a team does meanwhile. */
    public enum Doing {
        WORKS,
        WALKS,
        FLIES
    }
}
