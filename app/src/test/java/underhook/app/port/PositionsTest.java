package underhook.app.port;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import underhook.core.geo.GeoPoint;

/** Degrees to degrees and minutes, by hand. */
class PositionsTest {
    @Test
    void writes_degrees_and_decimal_minutes() {
        // 0.8106 x 60 = 48.636; 0.955191 x 60 = 57.31146.
        RescuePoint.Positions north =
                RescuePoint.positions(new GeoPoint(46.8106, -11.955191), Optional.empty());

        assertThat(north.minutes()).isEqualTo("46\u00B0 48.636' N  011\u00B0 57.311' W");
        assertThat(north.degrees()).isEqualTo("46.810600\u00B0 N  11.955191\u00B0 W");
        assertThat(north.grid()).isEmpty();
    }

    @Test
    void never_writes_sixty_minutes() {
        RescuePoint.Positions positions =
                RescuePoint.positions(new GeoPoint(-9.9999999, 179.9999999), Optional.empty());

        assertThat(positions.minutes()).isEqualTo("10\u00B0 00.000' S  180\u00B0 00.000' E");
    }
}
