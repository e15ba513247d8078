package underhook.app.replan;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import underhook.core.finding.FindingCode;
import underhook.core.job.LoadId;
import underhook.core.plan.LeftOut;

class ComparisonTest {
    private static LeftOut out(String load, FindingCode code, String why) {
        return new LeftOut(new LoadId(load), code, why);
    }

    /** One reason was told of all, whatever theirs was. */
    @Test
    void each_load_that_stays_behind_is_named_with_its_own_reason() {
        LeftOut shut = out("L1", FindingCode.NO_WAY, "No way to S1.");
        LeftOut shutToo = out("L2", FindingCode.NO_WAY, "No way to S1.");
        LeftOut late = out("L3", FindingCode.NO_ROOM_IN_DAY, "No room in the day.");
        LeftOut waits = out("L4", FindingCode.ORDER_RULE, "It waits for L2.");

        assertThat(Comparison.staysBehind(List.of(shut, shutToo)))
                .isEqualTo("L1, L2 stay behind: No way to S1.");
        assertThat(Comparison.staysBehind(List.of(waits, shut, late, shutToo)))
                .isEqualTo("L1, L2 stay behind: No way to S1. With it L4. For other reasons L3.");
        assertThat(Comparison.staysBehind(List.of(waits)))
                .isEqualTo("L4 stays behind: It waits for L2.");
    }
}
