package underhook.core.ahead;

import java.util.List;

/**
 * What is said of one question.
 *
 * @param isStated whether the job states something to answer from
 * @param points what matters most first
 */
public record Answer(Topic topic, boolean isStated, List<Point> points) {
    /** What is asked. */
    public enum Topic {
        NOTICES(
                "Notices near the day",
                "Read the source: this list is a distance and a search for words, no briefing."),
        FEASIBILITY("First feasibility", "A planning value, not clearance to fly."),
        STANDBY("Weather standby", "History is not a forecast."),
        LAYDOWNS(
                "Layout of the laydowns",
                "Pace it on the ground: the map knows no parked vehicle and nobody on foot."),
        PERMITS("Permits", "Local law decides.");

        private final String title;
        private final String caution;

        Topic(String title, String caution) {
            this.title = title;
            this.caution = caution;
        }

        public String title() {
            return title;
        }

        /** What must be told with every answer. */
        public String caution() {
            return caution;
        }
    }

    /** How a point stands. */
    public enum Mark {
        /** Nobody could read it, so it may be the worst of all. */
        UNREAD,
        NO,
        LOOK,
        NOTED,
        OK
    }

    /**
     * One thing that is said.
     *
     * @param subject what it is about, an id or a number
     * @param sentences each whole, in reading order
     * @param quoted what somebody else wrote, word for word; empty when nothing is quoted
     */
    public record Point(Mark mark, String subject, List<String> sentences, String quoted) {
        public Point {
            sentences = List.copyOf(sentences);
        }

        public Point(Mark mark, String subject, List<String> sentences) {
            this(mark, subject, sentences, "");
        }
    }

    /** An answer from what the job states. */
    public Answer(Topic topic, List<Point> points) {
        this(topic, true, points);
    }

    public Answer {
        points = List.copyOf(points);
    }
}
