package underhook.planner.search;

/** A way without a load as flown: between which places, with which line, in which hour. */
public record EmptyWay(int from, int to, int line, int slot) {}
