package underhook.core.geo;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;

/** Slopes of known steepness; the 10° and 1 km are common practice without a source. */
class WindSideTest {
    private static final GridShape SHAPE = new GridShape(-1500, -1500, 10, 300, 300);
    private static final Horizon.Eye EYE = new Horizon.Eye(new PlanePoint(0, 0), 0);
    private static final double FROM_EAST = Math.PI / 2;

    private static WindSide side(DoubleBinaryOperator heightM) {
        return WindSide.of(GridHeightField.of(SHAPE, heightM), EYE, FROM_EAST);
    }

    @Test
    void a_slope_up_to_the_wind_is_the_lee() {
        // tan 11° = 0.194, tan 9° = 0.158.
        assertThat(side((east, north) -> 0.194 * east)).isEqualTo(WindSide.LEE);
        assertThat(side((east, north) -> 0.158 * east)).isEqualTo(WindSide.OPEN);
    }

    @Test
    void a_slope_down_to_the_wind_is_windward() {
        assertThat(side((east, north) -> -0.194 * east)).isEqualTo(WindSide.WINDWARD);
        assertThat(side((east, north) -> 0)).isEqualTo(WindSide.OPEN);
    }

    @Test
    void ground_beyond_a_kilometre_is_left_out() {
        assertThat(side((east, north) -> east > 1010 ? 400 : 0)).isEqualTo(WindSide.OPEN);
        assertThat(side((east, north) -> east > 900 ? 400 : 0)).isEqualTo(WindSide.LEE);
    }

    @Test
    void in_a_valley_it_is_the_lee() {
        assertThat(side((east, north) -> 0.3 * Math.abs(east))).isEqualTo(WindSide.LEE);
    }
}
