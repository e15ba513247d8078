package underhook.core.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.line.HungBridle.Attachments;
import underhook.core.line.RiggingChain.Item;
import underhook.core.line.RiggingChain.Tag;
import underhook.core.unit.Units;
import underhook.testkit.SeededSamples;

class RiggingTest {
    private static final double G = Units.STANDARD_GRAVITY_M_PER_S2;
    private static final LocalDate TODAY = LocalDate.of(2026, 9, 8);
    private static final Tag GOOD = tag(TODAY, LocalDate.of(2030, 1, 1));

    private static Tag tag(LocalDate due, LocalDate retire) {
        return new Tag(LocalDate.of(2020, 9, 9), due, retire);
    }

    private static Item item(String name, double limitKg, double massKg, Tag tag) {
        return new Item(name, limitKg, massKg, false, Optional.of(tag));
    }

    @Test
    void what_is_due_or_past_its_life_refuses_and_names_itself() {
        RiggingChain chain =
                RiggingChain.of(
                        500,
                        List.of(
                                item("strop", 800, 2, tag(TODAY.minusDays(1), TODAY.plusDays(1))),
                                item("hook", 800, 10, tag(TODAY, TODAY.minusDays(1))),
                                item("swivel", 800, 1, GOOD),
                                Item.ofUntagged("line", 800, 20, true)));

        var findings = chain.findings("P01", TODAY);

        assertThat(findings)
                .extracting(finding -> finding.code())
                .containsExactly(
                        FindingCode.RIGGING_EXPIRED,
                        FindingCode.RIGGING_EXPIRED,
                        FindingCode.RIGGING_UNDATED);
        assertThat(findings.get(0).message()).contains("strop").contains("2026-09-07");
        assertThat(findings.get(0).severity()).isEqualTo(Severity.STOP);
        assertThat(findings.get(2).severity()).isEqualTo(Severity.CAUTION);
    }

    @Test
    void a_tag_counts_to_its_last_day_and_whole_years() {
        assertThat(RiggingChain.of(100, List.of(item("hook", 800, 1, GOOD))).findings("P", TODAY))
                .isEmpty();
        assertThat(GOOD.ageYears(TODAY)).isEqualTo(5);
        assertThat(GOOD.ageYears(TODAY.plusDays(1))).isEqualTo(6);
        assertThat(GOOD.ageYears(LocalDate.of(2019, 1, 1))).isZero();
    }

    @Test
    void the_weakest_item_is_named_and_the_most_load_is_what_it_leaves() {
        List<Item> items = List.of(item("strop", 700, 5, GOOD), item("hook", 620, 12, GOOD));
        RiggingChain heavy = RiggingChain.of(640, items);

        assertThat(heavy.governing().item().name()).isEqualTo("hook");
        assertThat(heavy.isWithinLimits()).isFalse();
        // 620 kg less the strop's 5 kg below the hook.
        assertThat(heavy.mostLoadKg()).isCloseTo(615, within(1e-9));
        assertThat(RiggingChain.of(615, items).isWithinLimits()).isTrue();
        assertThat(RiggingChain.of(615.1, items).isWithinLimits()).isFalse();
        assertThat(heavy.findings("P01", TODAY))
                .singleElement()
                .satisfies(
                        finding -> {
                            assertThat(finding.code()).isEqualTo(FindingCode.RIGGING_LIMIT);
                            assertThat(finding.message()).contains("hook");
                        });
    }

    @Test
    void every_item_added_leaves_less_for_the_load() {
        SeededSamples.of(141)
                .forEach(
                        200,
                        sample -> {
                            Item low =
                                    item(
                                            "low",
                                            sample.between(300, 900),
                                            sample.between(0, 20),
                                            GOOD);
                            Item high =
                                    item(
                                            "high",
                                            sample.between(300, 900),
                                            sample.between(0, 20),
                                            GOOD);
                            double one = RiggingChain.of(100, List.of(low)).mostLoadKg();
                            RiggingChain two = RiggingChain.of(100, List.of(low, high));
                            assertThat(two.mostLoadKg()).isLessThanOrEqualTo(one + 1e-9);
                            if (two.mostLoadKg() > 0) {
                                assertThat(
                                                RiggingChain.of(
                                                                two.mostLoadKg(),
                                                                List.of(low, high))
                                                        .governing()
                                                        .usedRatio())
                                        .isCloseTo(1, within(1e-9));
                            }
                        });
    }

    /** Rows R-SLING-10 and 12: legs of the plumb bridle, given as lengths, hang level again. */
    @Test
    void legs_cut_for_a_level_load_hang_it_level() {
        SeededSamples.of(142)
                .forEach(
                        300,
                        sample -> {
                            double d1 = sample.between(0.2, 5);
                            double d2 = sample.between(0.2, 5);
                            double height = sample.between(0.5, 8);
                            Bridle bridle = Bridle.of(300, d1, d2, height);
                            HungBridle hung =
                                    HungBridle.find(
                                                    300,
                                                    new Attachments(d1, d2, sample.between(0, 1)),
                                                    bridle.length1M(),
                                                    bridle.length2M())
                                            .orElseThrow();
                            assertThat(hung.tiltRad()).isCloseTo(0, within(1e-9));
                            assertThat(hung.tension1N())
                                    .isCloseTo(bridle.tension1N(), within(1e-6));
                            assertThat(hung.tension2N())
                                    .isCloseTo(bridle.tension2N(), within(1e-6));
                        });
    }

    @Test
    void a_load_out_of_balance_tilts_its_heavy_end_down_and_both_legs_lift_the_weight() {
        // Even legs of 3 m on a span of 4 m, the centre of gravity 0.5 m off the middle toward end
        // 1.
        HungBridle hung = HungBridle.find(400, new Attachments(1.5, 2.5, 0), 3, 3).orElseThrow();

        // Hook 0.5 m beyond the centre of gravity and √(9 − 4) m above: atan(0.5/2.2361) = 12.604°.
        assertThat(Math.toDegrees(hung.tiltRad())).isCloseTo(12.604, within(0.001));
        assertThat(
                        hung.tension1N() * Math.sin(hung.flattest1Rad())
                                + hung.tension2N() * Math.sin(hung.flattest2Rad()))
                .isCloseTo(400 * G, within(1e-6));
        assertThat(hung.tension1N() * Math.cos(hung.flattest1Rad()))
                .isCloseTo(hung.tension2N() * Math.cos(hung.flattest2Rad()), within(1e-6));
        assertThat(hung.tension1N()).isGreaterThan(hung.tension2N());
    }

    @Test
    void legs_that_do_not_meet_or_would_have_to_push_are_refused() {
        assertThat(HungBridle.find(400, new Attachments(2, 2, 0), 1, 2)).isEmpty();
        // The centre of gravity lies beyond the second attachment.
        assertThat(HungBridle.find(400, new Attachments(5, -1, 0), 3, 3)).isEmpty();
        // Attached far below the centre of gravity it turns over.
        assertThat(HungBridle.find(400, new Attachments(2, 2, -3), 3, 3)).isEmpty();
    }

    @Test
    void two_of_four_legs_are_counted_under_a_rigid_load() {
        double soft = Sling.legsLimitKg(500, 4, Math.toRadians(60), false);
        double rigid = Sling.legsLimitKg(500, 4, Math.toRadians(60), true);

        assertThat(soft).isCloseTo(2 * rigid, within(1e-9));
        // 500 · 2 · sin 60°.
        assertThat(rigid).isCloseTo(866.03, within(0.01));
    }

    /** Row R-SLING-29: 600 kg pass and 620 kg fail on 30 kN; a laxer profile does not help. */
    @Test
    void the_breaking_strength_rule_is_never_below_five() {
        double limit = Sling.limitKg(30000, 5);
        assertThat(600).isLessThan((int) limit);
        assertThat(620).isGreaterThan((int) limit);
        assertThat(Sling.limitKg(30000, 4)).isEqualTo(limit);
        assertThat(Sling.limitKg(30000, 7)).isLessThan(limit);
        // Row R-SLING-32.
        assertThat(Math.toDegrees(Sling.ATTACHMENT_ANGLE_RAD)).isCloseTo(30, within(1e-12));
    }

    /** Rows R-SLING-18 and 20. */
    @Test
    void chokers_carry_less_and_baskets_twice() {
        assertThat(Hitch.CHOKER.limitFactor(Hitch.Material.CHAIN, Math.PI / 2, 1)).isEqualTo(0.75);
        assertThat(Hitch.VERTICAL.limitFactor(Hitch.Material.WEB, Math.PI / 2, 1)).isEqualTo(1);
        assertThat(2 * Hitch.BASKET.limitFactor(Hitch.Material.WEB, Math.PI / 2, 25)).isEqualTo(4);
        for (Hitch.Material material : Hitch.Material.values()) {
            double last = 0;
            for (int degrees = 30; degrees <= 90; degrees++) {
                double now = Hitch.BASKET.limitFactor(material, Math.toRadians(degrees), 25);
                assertThat(now)
                        .isGreaterThanOrEqualTo(last)
                        .isLessThanOrEqualTo(2 * Math.sin(Math.toRadians(degrees)) + 1e-9);
                last = now;
            }
        }
        assertThatThrownBy(() -> Hitch.BASKET.limitFactor(Hitch.Material.WEB, Math.PI / 2, 24))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Hitch.BASKET.limitFactor(Hitch.Material.WEB, 0.5, 25))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void ranges_are_held() {
        assertThatThrownBy(() -> Item.ofUntagged("hook", 0, 1, false))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Tag(TODAY, TODAY, TODAY))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> RiggingChain.of(0, List.of(item("hook", 1, 1, GOOD))))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Attachments(1, -1, 0))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Sling.shackleAslantFactor(Double.NaN))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Sling.limitKg(0, 5)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Sling.bridleLimitKg(1, 2, 1.9))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
