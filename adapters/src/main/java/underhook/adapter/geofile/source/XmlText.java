package underhook.adapter.geofile.source;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.regex.Pattern;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * Turns bytes of UTF-8 into text before the parser sees them, for its own decoder prints what it does
 * not like. Other encodings, which the text or a mark at its start declares, are left to the parser.
 */
final class XmlText {
    /** No declaration is longer. */
    private static final int HEAD_BYTES = 256;

    private static final byte[] BYTE_ORDER_MARK = {(byte) 0xef, (byte) 0xbb, (byte) 0xbf};

    private static final Pattern OTHER_ENCODING =
            Pattern.compile(
                    "^[\\s\\S]{0,3}<\\?xml[^>]*\\sencoding\\s*=\\s*[\"'](?!utf-?8[\"'])[\\s\\S]*",
                    Pattern.CASE_INSENSITIVE);

    private XmlText() {}

    static XMLStreamReader reader(XMLInputFactory factory, InputStream bytes)
            throws IOException, XMLStreamException {
        InputStream in = new BufferedInputStream(bytes);
        in.mark(HEAD_BYTES);
        byte[] head = in.readNBytes(HEAD_BYTES);
        in.reset();
        if (isUtf16(head)
                || OTHER_ENCODING
                        .matcher(new String(head, StandardCharsets.ISO_8859_1))
                        .matches()) {
            return factory.createXMLStreamReader(in);
        }
        if (startsWithMark(head)) {
            in.skipNBytes(BYTE_ORDER_MARK.length);
        }
        return factory.createXMLStreamReader(
                new InputStreamReader(in, StandardCharsets.UTF_8.newDecoder()));
    }

    /** A mark of UTF-16, or half a character of nothing beside the first. */
    private static boolean isUtf16(byte[] head) {
        if (head.length < 2) {
            return false;
        }
        boolean isMarked = (head[0] & 0xff) >= 0xfe && (head[1] & 0xff) >= 0xfe;
        return isMarked || head[0] == 0 || head[1] == 0;
    }

    private static boolean startsWithMark(byte[] head) {
        for (int i = 0; i < BYTE_ORDER_MARK.length; i++) {
            if (i >= head.length || head[i] != BYTE_ORDER_MARK[i]) {
                return false;
            }
        }
        return true;
    }
}
