package underhook.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.LuminanceSource;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.net.URI;
import java.util.Arrays;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;

/** Another library reads the code: ZXing, as phones do. */
class JoinCodeTest {
    private static final int SCALE = 4;
    private static final int BORDER = 4;
    private static final int WHITE = 0xFFFFFF;

    @ParameterizedTest
    @ValueSource(
            strings = {
                "http://192.168.1.20:8465/day/job-3009",
                "https://10.0.0.7:49152/day/a-very-long-name-of-a-job-with-numbers-0123456789-0123456789"
            })
    void says_the_address_to_a_camera(String address) throws Exception {
        JsonNode rows = JoinCode.of(URI.create(address)).path("rows");

        assertThat(
                        new QRCodeReader()
                                .decode(new BinaryBitmap(new HybridBinarizer(drawn(rows))))
                                .getText())
                .isEqualTo(address);
    }

    private static LuminanceSource drawn(JsonNode rows) {
        int side = (rows.size() + 2 * BORDER) * SCALE;
        int[] pixels = new int[side * side];
        Arrays.fill(pixels, WHITE);
        for (int i = 0; i < pixels.length; i++) {
            int x = i % side / SCALE - BORDER;
            int y = i / side / SCALE - BORDER;
            String row = rows.path(y).asString("");
            if (y >= 0 && x >= 0 && x < row.length() && row.charAt(x) == '1') {
                pixels[i] = 0;
            }
        }
        return new RGBLuminanceSource(side, side, pixels);
    }
}
