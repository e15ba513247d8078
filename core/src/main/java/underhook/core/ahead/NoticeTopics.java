package underhook.core.ahead;

import java.util.List;
import java.util.regex.Pattern;

/**
 * What a notice speaks of, by its subject's letters and by words of its text.
 *
 * <p>A search for words: what it names is there, what it does not name may be there all the same.
 *
 * @source ICAO-8126 selection of subjects: OB and OL obstacles and their lights, R airspace, W warnings
 */
final class NoticeTopics {
    private record Topic(String said, Pattern subject, Pattern words) {}

    private static Topic topic(String said, String subject, String words) {
        return new Topic(
                said,
                Pattern.compile(subject),
                Pattern.compile("(?<![A-Z])(?:" + words + ")(?![A-Z])", Pattern.CASE_INSENSITIVE));
    }

    private static final List<Topic> TOPICS =
            List.of(
                    topic(
                            "It speaks of an obstacle or its light.",
                            "QO[BL]..",
                            "OBST(?:ACLES?)?|OBSTRUCTIONS?|LGTS?|LIGHTS?|LIGHTED|UNLIT|CRANES?|MASTS?"
                                    + "|TOWERS?|CHIMNEYS?|(?:WIND ?)?TURBINES?|ANTENNAS?|PYLONS?"),
                    topic(
                            "It speaks of a wire or a cable.",
                            "QXXX.",
                            "WIRES?|CABLES?|CABLEWAYS?|CABLECARS?|ROPEWAYS?|POWER ?LINES?"
                                    + "|TRANSMISSION LINES?|CATENARY"),
                    topic(
                            "It speaks of airspace that is closed, restricted or dangerous.",
                            "Q[RA]...",
                            "RESTRICTED|PROHIBITED|DANGER AREAS?|TEMPO(?:RARY)? (?:RESTRICTED|DANGER|SEGREGATED)"
                                    + "|TRA|TSA|CTR|CTA|TMA|AIRSPACE|CLSD|RMZ|TMZ"),
                    topic(
                            "It speaks of others who fly, jump or lift something.",
                            "QW[ABCEFGJLPTUVYZ]..",
                            "PJE|PARACHUT\\w*|PARAGLID\\w*|HANG ?GLID\\w*|GLIDERS?|GLIDING|BALLOONS?|KITES?"
                                    + "|UAS|UAV|RPAS|DRONES?|UNMANNED|AEROBATICS?|AIR ?SHOW|FORMATION"
                                    + "|HELICOPTERS?|HEL|SLING|SAR|MIL(?:ITARY)?|EXERCISES?|LOW FLYING"),
                    topic(
                            "It speaks of blasting, fire, smoke or beams of light.",
                            "QW[DHMRSW]..",
                            "BLAST(?:ING)?|DEMOLITION|EXPLOSI\\w*|FIRING|SHOOTING|FIREWORKS?|PYROTECHN\\w*"
                                    + "|ROCKETS?|LASERS?|SEARCHLIGHTS?|FIRES?|SMOKE|AVALANCHE|VOLCANIC"),
                    topic("It speaks of fuel.", "QFU..", "FUEL|AVGAS|JET ?A-?1"));

    private NoticeTopics() {}

    static List<String> of(Notice notice) {
        List<String> found =
                TOPICS.stream()
                        .filter(
                                topic ->
                                        topic.subject.matcher(notice.subject()).matches()
                                                || topic.words.matcher(notice.raw()).find())
                        .map(Topic::said)
                        .toList();
        return found.isEmpty()
                ? List.of("Its words name nothing of what is looked for here.")
                : found;
    }
}
