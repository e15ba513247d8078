package underhook.adapter.mapfile;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/** Writes indented XML; characters that XML cannot hold become U+FFFD. */
final class XmlText {
    private final XMLStreamWriter xml;
    private int depth;

    private XmlText(XMLStreamWriter xml) {
        this.xml = xml;
    }

    /** The elements of a document. */
    interface Content {
        void write(XmlText xml) throws XMLStreamException;
    }

    /** Writes the whole file. */
    static void write(Path file, Content content) throws IOException {
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file))) {
            XMLStreamWriter xml =
                    XMLOutputFactory.newDefaultFactory()
                            .createXMLStreamWriter(out, StandardCharsets.UTF_8.name());
            xml.writeStartDocument(StandardCharsets.UTF_8.name(), "1.0");
            content.write(new XmlText(xml));
            xml.writeEndDocument();
            xml.writeCharacters("\n");
            xml.close();
        } catch (XMLStreamException failed) {
            throw new IOException(file + " could not be written: " + failed.getMessage(), failed);
        }
    }

    /** Opens an element; attributes are names and values by turns. */
    void open(String name, String... attributes) throws XMLStreamException {
        indent();
        xml.writeStartElement(name);
        attributes(attributes);
        depth++;
    }

    void close() throws XMLStreamException {
        depth--;
        indent();
        xml.writeEndElement();
    }

    /** An element with text; nothing for empty text. */
    void leaf(String name, String text) throws XMLStreamException {
        if (!text.isEmpty()) {
            indent();
            xml.writeStartElement(name);
            xml.writeCharacters(legal(text));
            xml.writeEndElement();
        }
    }

    private void attributes(String... attributes) throws XMLStreamException {
        for (int i = 0; i + 1 < attributes.length; i += 2) {
            xml.writeAttribute(attributes[i], legal(attributes[i + 1]));
        }
    }

    private void indent() throws XMLStreamException {
        xml.writeCharacters("\n" + "  ".repeat(depth));
    }

    /** The characters of XML 1.0 (fifth edition, production 2). */
    static String legal(String text) {
        StringBuilder kept = new StringBuilder(text.length());
        for (int i = 0; i < text.length(); i = text.offsetByCodePoints(i, 1)) {
            int point = text.codePointAt(i);
            kept.appendCodePoint(isLegal(point) ? point : 0xFFFD);
        }
        return kept.toString();
    }

    private static boolean isLegal(int point) {
        return point == 9
                || point == 10
                || point == 13
                || (point >= 0x20 && point <= 0xD7FF)
                || (point >= 0xE000 && point <= 0xFFFD)
                || point >= 0x10000;
    }
}
