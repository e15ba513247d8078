package underhook.adapter.osm;

import java.io.BufferedInputStream;
import java.io.BufferedReader;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.zip.GZIPInputStream;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.apache.commons.compress.compressors.bzip2.BZip2CompressorInputStream;

/**
 * An XML file, plain or packed.
 *
 * @source OSM-WIKI page "OSM XML"
 */
final class XmlFile implements OsmFile {
    private static final int BUFFER = 1 << 16;
    private static final char BYTE_ORDER_MARK = '\uFEFF';

    private final Path file;
    private final String lowerName;

    XmlFile(Path file, String lowerName) {
        this.file = file;
        this.lowerName = lowerName;
    }

    @Override
    public void read(Set<Part> wanted, Sink sink) throws IOException {
        try (InputStream packed = Files.newInputStream(file);
                InputStream plain = unpack(new BufferedInputStream(packed, BUFFER));
                PacedStream paced = new PacedStream(plain, TotalLimit.of(Files.size(file)))) {
            parse(paced, wanted, sink);
        } catch (EOFException e) {
            OsmFault fault = OsmFault.unreadable("is cut off", "", "");
            fault.initCause(e);
            throw fault;
        } catch (CharacterCodingException e) {
            OsmFault fault = OsmFault.unreadable("has text that is not UTF-8", "", "");
            fault.initCause(e);
            throw fault;
        } catch (IllegalArgumentException
                | IllegalStateException
                | IndexOutOfBoundsException
                | NegativeArraySizeException e) {
            // Unpacking damaged data, the library throws these too.
            OsmFault fault = OsmFault.unreadable("is damaged", String.valueOf(e.getMessage()), "");
            fault.initCause(e);
            throw fault;
        }
    }

    private InputStream unpack(InputStream in) throws IOException {
        if (lowerName.endsWith(".gz")) {
            return new GZIPInputStream(in, BUFFER);
        }
        // Packed in parallel, a file is several streams one after the other.
        return lowerName.endsWith(".bz2") ? new BZip2CompressorInputStream(in, true) : in;
    }

    private static void parse(PacedStream in, Set<Part> wanted, Sink sink) throws IOException {
        try {
            XMLStreamReader reader = factory().createXMLStreamReader(text(in));
            XmlThings things = new XmlThings(reader, wanted, sink);
            while (reader.hasNext()) {
                things.accept(reader.next());
                in.paced();
            }
            reader.close();
        } catch (XMLStreamException e) {
            if (e.getNestedException() instanceof IOException cause) {
                throw cause;
            }
            OsmFault fault = OsmFault.unreadable("is no XML that can be read", firstLine(e), "");
            fault.initCause(e);
            throw e.getLocation() == null ? fault : fault.at(e.getLocation().getLineNumber());
        }
    }

    /** Maps are UTF-8. The parser's own decoder would print what it does not like. */
    private static Reader text(InputStream in) throws IOException {
        Reader text =
                new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8.newDecoder()));
        text.mark(1);
        if (text.read() != BYTE_ORDER_MARK) {
            text.reset();
        }
        return text;
    }

    /** The JDK's own parser: another on the class path would answer otherwise. */
    private static XMLInputFactory factory() {
        XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        factory.setProperty(XMLInputFactory.IS_REPLACING_ENTITY_REFERENCES, false);
        factory.setProperty(XMLInputFactory.IS_COALESCING, false);
        factory.setXMLResolver(
                (publicId, systemId, base, namespace) -> {
                    throw new XMLStreamException("nothing outside the file is read");
                });
        return factory;
    }

    private static String firstLine(XMLStreamException e) {
        String text = String.valueOf(e.getMessage());
        return text.substring(text.indexOf('\n') + 1);
    }
}
