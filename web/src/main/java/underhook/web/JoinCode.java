package underhook.web;

import io.nayuki.qrcodegen.QrCode;
import java.net.URI;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** An address as a code that a phone's camera reads. @source ISO-18004 */
final class JoinCode {
    private JoinCode() {}

    /** The address with the rows of its code, dark as 1; the light border is the page's. */
    static ObjectNode of(URI address) {
        QrCode code = QrCode.encodeText(address.toString(), QrCode.Ecc.MEDIUM);
        ObjectNode node = Json.object().put("address", address.toString());
        ArrayNode rows = node.putArray("rows");
        for (int y = 0; y < code.size; y++) {
            StringBuilder row = new StringBuilder();
            for (int x = 0; x < code.size; x++) {
                row.append(code.getModule(x, y) ? '1' : '0');
            }
            rows.add(row.toString());
        }
        return node;
    }
}
