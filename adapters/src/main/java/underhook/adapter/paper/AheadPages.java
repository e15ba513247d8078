package underhook.adapter.paper;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import underhook.app.port.OutputWriter.Output;
import underhook.core.ahead.Ahead;
import underhook.core.ahead.Answer;
import underhook.core.ahead.Answer.Mark;
import underhook.core.ahead.Answer.Point;

/** What is said beside the plan, for reading before the flight; no page where nothing is. */
final class AheadPages {
    private static final Face WHAT = new Face(false, 9.5);
    private static final Face QUOTED = new Face(false, 8);

    private final List<Answer> answers;

    AheadPages(Output output) {
        answers =
                Ahead.of(
                                output.readJob().job(),
                                output.readJob().ground(),
                                output.readJob().beside(),
                                Optional.of(output.plan()))
                        .stream()
                        .filter(Answer::isStated)
                        .toList();
    }

    void draw(Book book) throws IOException {
        if (answers.isEmpty()) {
            return;
        }
        Flow flow = new Flow(book, PDRectangle.A4, "Beside the plan");
        for (Answer answer : answers) {
            flow.heading(answer.topic().title());
            flow.paragraph(Face.STRONG, answer.topic().caution());
            flow.space(4);
            flow.table(
                    List.of(
                            Flow.Column.strong("", 70),
                            Flow.Column.strong("about", 80),
                            new Flow.Column("what", 377, WHAT)));
            for (Point point : answer.points()) {
                flow.row(
                        List.of(
                                mark(point.mark()),
                                point.subject(),
                                String.join(" ", point.sentences())));
            }
            flow.space(6);
            for (Point point : answer.points()) {
                if (!point.quoted().isEmpty() && point.mark() != Mark.NOTED) {
                    flow.paragraph(QUOTED.withSize(9), point.subject() + ", word for word:");
                    for (String line : point.quoted().lines().toList()) {
                        flow.paragraph(QUOTED, line.isBlank() ? " " : line.stripTrailing());
                    }
                    flow.space(4);
                }
            }
        }
    }

    /** A shape beside the word, so that it is seen at a glance on a bad print too. */
    private static String mark(Mark mark) {
        return switch (mark) {
            case UNREAD -> "■ UNREAD";
            case NO -> "■ NO";
            case LOOK -> "▲ LOOK";
            case NOTED -> "○ noted";
            case OK -> "○ ok";
        };
    }
}
