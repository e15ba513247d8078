package underhook.core.learn;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Against the data of Hachemeister (1975) and the results that the statistics package actuar prints for
 * them in the model of Bühlmann and Straub. Source: BUHLMANN-STRAUB, from memory; the weights of each row
 * add up to the printed ones, and the averages come out as printed, which a slip of memory would break.
 */
class CredibilityReferenceTest {
    private static final double[][] RATIOS = {
        {1738, 1642, 1794, 2051, 2079, 2234, 2032, 2035, 2115, 2262, 2267, 2517},
        {1364, 1408, 1597, 1444, 1342, 1675, 1470, 1448, 1464, 1831, 1612, 1471},
        {1759, 1685, 1479, 1763, 1674, 2103, 1502, 1622, 1828, 2155, 2233, 2059},
        {1223, 1146, 1010, 1257, 1426, 1532, 1953, 1123, 1343, 1243, 1762, 1306},
        {1456, 1499, 1609, 1741, 1482, 1572, 1606, 1735, 1607, 1573, 1613, 1690}
    };
    private static final double[][] WEIGHTS = {
        {7861, 9251, 8706, 8575, 7917, 8263, 9456, 8003, 7365, 7832, 7849, 9077},
        {1622, 1742, 1523, 1515, 1622, 1602, 1964, 1515, 1527, 1748, 1654, 1861},
        {1147, 1357, 1329, 1204, 998, 1077, 1277, 1218, 896, 1003, 1108, 1121},
        {407, 396, 348, 341, 315, 328, 352, 331, 287, 384, 321, 342},
        {2902, 3172, 3046, 3068, 2693, 2910, 3275, 2697, 2663, 3017, 3242, 3425}
    };
    private static final double[] TOTAL_WEIGHTS = {100155, 19895, 13735, 4152, 36110};
    private static final double[] AVERAGES = {2061, 1511, 1806, 1353, 1600};
    private static final double[] FACTORS = {0.9847, 0.9276, 0.8985, 0.7279, 0.9588};
    private static final double[] PREMIUMS = {2055, 1524, 1793, 1443, 1603};

    @Test
    void factors_and_estimates_are_those_that_were_printed() {
        Credibility found = Credibility.of(groups());

        assertThat(found.meanRatio()).isCloseTo(1684, within(0.5));
        assertThat(found.betweenFactor()).isCloseTo(89639, within(1.0));
        assertThat(found.withinFactor()).isCloseTo(139120026, within(1.0));
        for (int i = 0; i < PREMIUMS.length; i++) {
            Credibility.Estimate estimate = found.groups().get(i);
            assertThat(estimate.ownRatio()).isCloseTo(AVERAGES[i], within(0.5));
            assertThat(estimate.credibilityFactor()).isCloseTo(FACTORS[i], within(5e-5));
            assertThat(estimate.believedRatio()).isCloseTo(PREMIUMS[i], within(0.5));
            assertThat(estimate.samples()).isEqualTo(12);
        }
    }

    private static List<Credibility.Group> groups() {
        List<Credibility.Group> groups = new ArrayList<>();
        for (int i = 0; i < RATIOS.length; i++) {
            List<Credibility.Sample> samples = new ArrayList<>();
            double total = 0;
            for (int k = 0; k < RATIOS[i].length; k++) {
                samples.add(new Credibility.Sample(RATIOS[i][k], WEIGHTS[i][k]));
                total += WEIGHTS[i][k];
            }
            assertThat(total).isEqualTo(TOTAL_WEIGHTS[i]);
            groups.add(new Credibility.Group("state " + (i + 1), samples));
        }
        return groups;
    }
}
