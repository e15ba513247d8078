package underhook.core.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import underhook.core.job.Hanging;
import underhook.core.job.WireKind;
import underhook.core.unit.Units;
import underhook.core.wire.Slackness.Size;
import underhook.testkit.SeededSamples;

class SlacknessTest {
    private static final Size LONG = new Size(300, 10);
    private static final Size SHORT = new Size(150, -5);

    private static Hanging hanging(OptionalDouble sagM, double[] tensionWeightDiameter) {
        double[] v = tensionWeightDiameter;
        return new Hanging(
                WireKind.POWER,
                List.of(),
                sagM,
                v[0] > 0 ? OptionalDouble.of(v[0]) : OptionalDouble.empty(),
                v[1] > 0 ? OptionalDouble.of(v[1]) : OptionalDouble.empty(),
                v[2] > 0 ? OptionalDouble.of(v[2]) : OptionalDouble.empty(),
                false);
    }

    private static Hanging sagOnly(double sagM) {
        return hanging(OptionalDouble.of(sagM), new double[3]);
    }

    @Test
    void assumes_from_straight_to_six_percent_where_nothing_is_stated() {
        SagRange range = Slackness.of(Hanging.of(WireKind.POWER, true), List.of(LONG)).range(LONG);

        assertThat(range.leastM(0.5)).isZero();
        assertThat(range.mostM(0.5)).isCloseTo(18, within(1e-6));
        assertThat(range.mostM(0)).isCloseTo(0, within(1e-9));
        assertThat(range.mostM(1)).isCloseTo(0, within(1e-9));
    }

    @Test
    void grows_in_the_heat_by_the_length_that_heat_adds() {
        // 300 m with 6 m of sag: 0.320 m longer than the span; 60 K add 23e-6 · 60 · 300.3 = 0.4144
        // m.
        // By the parabola the sag is then √(0.7344 · 3 · 300 / 8) = 9.09 m.
        Size level = new Size(300, 0);

        SagRange range = Slackness.of(sagOnly(6), List.of(level)).range(level);

        assertThat(range.mostM(0.5)).isCloseTo(9.09, within(0.02));
        // 40 K take 0.2763 m: √(0.0437 · 900 / 8) = 2.217 m, four fifths of it 1.774 m.
        assertThat(range.leastM(0.5)).isCloseTo(1.774, within(0.02));
    }

    @Test
    void stretches_again_in_the_cold_when_weight_and_diameter_are_known() {
        // 10 N/m, 20 mm, 6 m of sag on 300 m: level tension 18,750 N; steel of that size
        // 62.83 MN. At D' the length is 300 + 8 D'²/900, the tension 112,500/D'. With 40 K colder:
        // 8 D'²/900 = 0.32 − 0.2763 + 300 (112,500/D' − 18,750) / 62.83e6;
        // at D' = 3.64: 0.1178 against 0.0437 + 0.0580 = 0.1017; at 3.50: 0.1089 against 0.1077;
        // at 3.49: 0.1083 against 0.1081; at 3.485: 0.10796 against 0.10831. Four fifths of 3.488.
        Hanging known = hanging(OptionalDouble.of(6), new double[] {0, 10, 0.020});
        Size level = new Size(300, 0);

        double leastM = Slackness.of(known, List.of(level)).range(level).leastM(0.5);

        assertThat(leastM).isCloseTo(0.8 * 3.488, within(0.02));
    }

    @Test
    void contains_a_printed_correction_of_sag_for_temperature() {
        // 300 ft of No. 0 copper, 5.30 ft at 60 °F, 0.024 ft for each degree from 0 to 130 °F: 3.86
        // to
        // 6.98 ft. The chart's range lies within our 40 K colder and 60 K hotter, so its sags must
        // too.
        // CPUC-GO95 appendix C (d), example and chart 7; area and weight of the wire from memory.
        Hanging copper =
                hanging(
                        OptionalDouble.of(Units.ftToM(5.30)),
                        new double[] {0, 0.326 * 14.5939, 0.00935});
        Size span = new Size(Units.ftToM(300), 0);

        SagRange range = Slackness.of(copper, List.of(span)).range(span);

        assertThat(Units.mToFt(range.leastM(0.5))).isLessThan(3.86).isGreaterThan(1);
        assertThat(Units.mToFt(range.mostM(0.5))).isGreaterThan(6.98).isLessThan(12);
    }

    @Test
    void uses_one_tension_in_all_spans() {
        // a = 10,000 N over 10 N/m = 1000 m: 300 m hang by 11.25 m, half of that span a quarter.
        Hanging known = hanging(OptionalDouble.empty(), new double[] {10_000, 10, 0});
        Slackness slackness = Slackness.of(known, List.of(LONG, SHORT));

        assertThat(slackness.isStated()).isTrue();
        for (Size span : List.of(LONG, SHORT)) {
            double statedM = Catenary.ofParameter(span.spanM(), span.heightDiffM(), 1000).sagM();
            assertThat(slackness.range(span).leastM(0.5)).isLessThan(statedM);
            assertThat(slackness.range(span).mostM(0.5)).isGreaterThan(statedM);
        }
    }

    @Test
    void counts_a_stated_sag_anywhere_between_bends() {
        // 6.5 m stated on bends 1500 m apart: the real span is at most 650 m, whose 60 K add 0.897
        // m:
        // 8 · 6.5² / (3 · 650) = 0.1733; √(1.0704 · 3 · 650 / 8) = 16.15 m.
        Size bends = new Size(1500, 20);
        Slackness slackness = Slackness.of(sagOnly(6.5), List.of(bends, SHORT));

        assertThat(slackness.mostBetweenBendsM(SHORT)).isCloseTo(16.15, within(0.05));
        assertThat(slackness.mostBetweenBendsM(bends)).isCloseTo(16.15, within(0.05));
    }

    @Test
    void holds_what_was_stated_between_tight_and_slack() {
        SeededSamples.of(31)
                .forEach(
                        300,
                        sample -> {
                            double spanM = sample.between(20, 1200);
                            Size span = new Size(spanM, sample.between(-0.6, 0.6) * spanM);
                            double sagM = sample.between(0.005, 0.08) * spanM;
                            double diameterM = sample.coin() ? sample.between(0.004, 0.04) : 0;
                            double[] rest = {0, diameterM * 450, diameterM};
                            SagRange range =
                                    Slackness.of(
                                                    hanging(OptionalDouble.of(sagM), rest),
                                                    List.of(span))
                                            .range(span);
                            double share = sample.between(0, 1);
                            assertThat(range.leastM(share))
                                    .isLessThanOrEqualTo(range.mostM(share) + 1e-9);
                            assertThat(range.leastM(0.5)).isLessThan(sagM);
                            assertThat(range.mostM(0.5)).isGreaterThan(sagM);
                            // Never tighter than a wire that does not stretch lets it be.
                            double stiffM =
                                    Slackness.of(sagOnly(sagM), List.of(span))
                                            .range(span)
                                            .leastM(0.5);
                            assertThat(range.leastM(0.5)).isGreaterThanOrEqualTo(stiffM - 1e-6);
                        });
    }
}
