package underhook.planner.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static underhook.planner.verify.SmallDay.with;

import java.util.List;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.plan.Limit;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;

/** A made plan with one stated limit other than it is; arithmetic alone says what is wrong. */
class MarginCheckTest {
    private static final SmallDay DAY = SmallDay.good();

    private static List<FindingCode> refusals(Plan plan) {
        return new PlanVerifier()
                .check(DAY.job(), DAY.ground(), plan).violations().stream()
                        .map(Finding::code)
                        .distinct()
                        .toList();
    }

    /** The plan with every first rotation's limits other than they are. */
    private static Plan told(Plan plan, UnaryOperator<List<Limit>> change) {
        return with(
                plan,
                "steps",
                plan.steps().stream()
                        .map(
                                step ->
                                        with(
                                                step,
                                                "rotation",
                                                step.rotation().map(turn -> told(turn, change))))
                        .toList());
    }

    private static Rotation told(Rotation turn, UnaryOperator<List<Limit>> change) {
        return with(turn, "limits", change.apply(turn.limits()));
    }

    private static UnaryOperator<List<Limit>> each(String code, Function<Limit, Limit> change) {
        return limits ->
                limits.stream()
                        .map(limit -> limit.code().equals(code) ? change.apply(limit) : limit)
                        .toList();
    }

    private static List<Limit> earlier(List<Limit> limits) {
        List<String> codes =
                limits.stream()
                        .map(Limit::code)
                        .filter(code -> code.startsWith("LINE_LENGTH at "))
                        .toList();
        return each(codes.get(1), limit -> with(limit, "code", "LINE_LENGTH"))
                .apply(
                        limits.stream()
                                .filter(limit -> !limit.code().equals(codes.get(0)))
                                .toList());
    }

    /** Earlier programs stated the line of the set-down alone, without a place. */
    @Test
    void what_an_earlier_program_said_of_the_line_still_holds() {
        assertThat(refusals(told(Planned.of(DAY), MarginCheckTest::earlier))).isEmpty();
    }

    /** The other rotations say that the program knows both ends. */
    @Test
    void one_lift_alone_may_not_state_the_line_as_earlier_programs_did() {
        Plan plan = Planned.of(DAY);
        String first =
                plan.steps().stream()
                        .flatMap(step -> step.rotation().stream())
                        .findFirst()
                        .orElseThrow()
                        .loads()
                        .get(0)
                        .value();
        Plan forged =
                with(
                        plan,
                        "steps",
                        plan.steps().stream()
                                .map(
                                        step ->
                                                with(
                                                        step,
                                                        "rotation",
                                                        step.rotation()
                                                                .map(
                                                                        turn ->
                                                                                turn.loads()
                                                                                                .get(
                                                                                                        0)
                                                                                                .value()
                                                                                                .equals(
                                                                                                        first)
                                                                                        ? told(
                                                                                                turn,
                                                                                                MarginCheckTest
                                                                                                        ::earlier)
                                                                                        : turn)))
                                .toList());

        assertThat(refusals(forged)).containsExactly(FindingCode.MARGIN_WRONG);
    }

    static Stream<Arguments> lies() {
        return Stream.of(
                Arguments.of(
                        "the line stated once more, for no place",
                        (UnaryOperator<List<Limit>>)
                                limits ->
                                        Stream.concat(
                                                        limits.stream(),
                                                        limits.stream()
                                                                .filter(
                                                                        limit ->
                                                                                limit.code()
                                                                                        .equals(
                                                                                                "LINE_LENGTH at S1"))
                                                                .map(
                                                                        limit ->
                                                                                with(
                                                                                        with(
                                                                                                limit,
                                                                                                "code",
                                                                                                "LINE_LENGTH"),
                                                                                        "governing",
                                                                                        false)))
                                                .toList()),
                Arguments.of(
                        "more left than there is",
                        each("LINE_LIMIT", limit -> with(limit, "marginPercent", 99.0))),
                Arguments.of(
                        "less used than there is",
                        each("HOVER_MASS", limit -> with(limit, "value", limit.value() - 20))),
                Arguments.of(
                        "more allowed than there is",
                        each("HOOK_LIMIT", limit -> with(limit, "limit", limit.limit() + 20))),
                Arguments.of(
                        "a limit below nothing",
                        each("WIND_GUST at A", limit -> with(limit, "limit", -limit.limit()))),
                Arguments.of(
                        "a line that needs nothing",
                        each("LINE_LENGTH at S1", limit -> with(limit, "value", 0.0))),
                Arguments.of(
                        "a line that needs nothing where it is hooked up",
                        each("LINE_LENGTH at A", limit -> with(limit, "value", 0.0))),
                Arguments.of(
                        "nothing said of the line where it is hooked up",
                        (UnaryOperator<List<Limit>>)
                                limits ->
                                        limits.stream()
                                                .filter(
                                                        limit ->
                                                                !limit.code()
                                                                        .equals("LINE_LENGTH at A"))
                                                .toList()),
                Arguments.of(
                        "a limit of which nobody says whose",
                        each("LINE_LIMIT", limit -> with(limit, "source", " "))),
                Arguments.of(
                        "a limit stated twice",
                        (UnaryOperator<List<Limit>>)
                                limits ->
                                        Stream.concat(
                                                        limits.stream(),
                                                        limits.stream()
                                                                .filter(
                                                                        limit ->
                                                                                limit.code()
                                                                                        .equals(
                                                                                                "LINE_LIMIT")))
                                                .toList()),
                Arguments.of(
                        "another said to govern",
                        (UnaryOperator<List<Limit>>)
                                limits ->
                                        limits.stream()
                                                .map(
                                                        limit ->
                                                                with(
                                                                        limit,
                                                                        "governing",
                                                                        limit.code()
                                                                                .equals(
                                                                                        "LINE_LIMIT")))
                                                .toList()),
                Arguments.of(
                        "a mass left out",
                        (UnaryOperator<List<Limit>>)
                                limits ->
                                        limits.stream()
                                                .filter(
                                                        limit ->
                                                                !limit.code()
                                                                        .equals(
                                                                                "EXTERNAL_MASS_LIMIT"))
                                                .toList()));
    }

    @Test
    void what_the_planner_states_is_so() {
        assertThat(refusals(Planned.of(DAY))).isEmpty();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("lies")
    void refuses(String lie, UnaryOperator<List<Limit>> change) {
        assertThat(refusals(told(Planned.of(DAY), change)))
                .as(lie)
                .contains(FindingCode.MARGIN_WRONG);
    }

    @Test
    void refuses_a_line_that_is_too_short_by_its_own_words() {
        UnaryOperator<List<Limit>> over =
                each("LINE_LENGTH at A", limit -> with(limit, "value", limit.limit() + 0.2));

        assertThat(refusals(told(Planned.of(DAY), over))).contains(FindingCode.LINE_LENGTH);
    }

    @Test
    void refuses_one_rotation_without_limits_among_others() {
        Plan plan = Planned.of(DAY);
        Rotation first =
                plan.steps().stream()
                        .flatMap(step -> step.rotation().stream())
                        .findFirst()
                        .orElseThrow();

        Plan silent =
                with(
                        plan,
                        "steps",
                        plan.steps().stream()
                                .map(
                                        step ->
                                                with(
                                                        step,
                                                        "rotation",
                                                        step.rotation()
                                                                .map(
                                                                        turn ->
                                                                                turn.equals(first)
                                                                                        ? told(
                                                                                                turn,
                                                                                                all ->
                                                                                                        List
                                                                                                                .of())
                                                                                        : turn)))
                                .toList());

        assertThat(refusals(silent)).containsExactly(FindingCode.MARGIN_WRONG);
    }
}
