package underhook.web;

import java.util.List;
import tools.jackson.databind.node.ObjectNode;
import underhook.core.ahead.Answer;

/** What is said of a job beside its plan. */
final class AheadJson {
    private AheadJson() {}

    static ObjectNode of(List<Answer> answers) {
        ObjectNode node = Json.object();
        node.set("answers", Json.array(answers, AheadJson::of));
        return node;
    }

    private static ObjectNode of(Answer answer) {
        ObjectNode node = Json.object();
        node.put("topic", answer.topic().name());
        node.put("title", answer.topic().title());
        node.put("caution", answer.topic().caution());
        node.set("points", Json.array(answer.points(), AheadJson::of));
        return node;
    }

    private static ObjectNode of(Answer.Point point) {
        ObjectNode node = Json.object();
        node.put("mark", point.mark().name());
        node.put("subject", point.subject());
        node.set("sentences", Json.texts(point.sentences()));
        node.put("quoted", point.quoted());
        return node;
    }
}
