package underhook.planner.search;

import java.util.ArrayList;
import java.util.List;

/** What happened in a day, in order; cut back when an attempt is taken back. */
final class DayLog {
    final List<DayEvent> events = new ArrayList<>();
    final List<TeamStay> stays = new ArrayList<>();

    void cutTo(int eventCount, int stayCount) {
        events.subList(eventCount, events.size()).clear();
        stays.subList(stayCount, stays.size()).clear();
    }
}
