package underhook.adapter.geofile.source;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.jspecify.annotations.Nullable;
import underhook.core.finding.FindingCode;

/**
 * A place in an XML file that is read from front to back. Mutable.
 *
 * <p>A {@link Unreadable} thrown while an element is read leaves the cursor inside of it; whoever catches it in a
 * step of {@link #eachChild} goes on with the next element. A {@link XMLStreamException} ends the file.
 */
public final class XmlCursor {
    private static final int MOST_DEPTH = 200;
    private static final int LONGEST_TEXT = 16 << 20;

    private final XMLStreamReader reader;
    private int depth;

    private XmlCursor(XMLStreamReader reader) {
        this.reader = reader;
    }

    /** What is done with an element; it need not read all of it. */
    public interface Step {
        void read() throws XMLStreamException, Unreadable;
    }

    /** What is done with a whole file, from its outermost element. */
    public interface Reading {
        void read(XmlCursor cursor) throws XMLStreamException, Unreadable;
    }

    /** Reads a file; every reason why its end was not reached is among the faults. */
    public static void read(Path file, long mostBytes, Faults faults, Reading reading) {
        try (InputStream in = Files.newInputStream(file)) {
            read(in, mostBytes, faults, reading);
        } catch (IOException e) {
            faults.add(0, Unreadable.file("cannot be read").allowing("a readable file"));
        }
    }

    /** Reads a stream, which is not closed. */
    public static void read(InputStream in, long mostBytes, Faults faults, Reading reading) {
        int line = 0;
        try {
            XmlCursor cursor =
                    new XmlCursor(XmlText.reader(factory(), new BoundedStream(in, mostBytes)));
            try {
                cursor.toRoot();
                line = cursor.line();
                reading.read(cursor);
                cursor.toEnd();
            } finally {
                cursor.reader.close();
            }
        } catch (IOException | XMLStreamException e) {
            faults.add(line(e), reason(e, mostBytes));
        } catch (Unreadable e) {
            faults.add(line, e);
        }
    }

    private static XMLInputFactory factory() {
        XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        factory.setProperty(XMLInputFactory.IS_REPLACING_ENTITY_REFERENCES, false);
        factory.setXMLResolver(
                (publicId, systemId, base, namespace) -> {
                    throw new Refused("points to another file");
                });
        return factory;
    }

    private static int line(Exception e) {
        return e instanceof XMLStreamException there && there.getLocation() != null
                ? Math.max(0, there.getLocation().getLineNumber())
                : 0;
    }

    private static Unreadable reason(Exception e, long mostBytes) {
        if (e instanceof Refused refused) {
            return Unreadable.file(refused.what);
        }
        for (Throwable cause = e; cause != null; cause = deeper(cause)) {
            if (cause instanceof BoundedStream.TooLarge) {
                return Unreadable.of(FindingCode.TOO_LARGE, "is too large")
                        .allowing("at most " + (mostBytes >> 20) + " MB");
            }
        }
        return Unreadable.file("is no well-formed XML").allowing("a whole file");
    }

    private static @Nullable Throwable deeper(Throwable cause) {
        return cause instanceof XMLStreamException stream && stream.getNestedException() != null
                ? stream.getNestedException()
                : cause.getCause();
    }

    private void toRoot() throws XMLStreamException {
        int event = next();
        while (event != XMLStreamConstants.START_ELEMENT) {
            event = next();
        }
    }

    private void toEnd() throws XMLStreamException {
        while (reader.getEventType() != XMLStreamConstants.END_DOCUMENT) {
            next();
        }
    }

    private int next() throws XMLStreamException {
        int event = reader.next();
        switch (event) {
            case XMLStreamConstants.START_ELEMENT -> {
                depth++;
                if (depth > MOST_DEPTH) {
                    throw new Refused("is nested more than " + MOST_DEPTH + " deep", reader);
                }
            }
            case XMLStreamConstants.END_ELEMENT -> depth--;
            case XMLStreamConstants.DTD -> throw new Refused("has a document type", reader);
            case XMLStreamConstants.ENTITY_REFERENCE ->
                    throw new Refused("has an entity of its own", reader);
            default -> {
                // Text, comments and the like are whoever asks for text's affair.
            }
        }
        return event;
    }

    /** Takes a step for each child of the current element, and ends behind that element. */
    public void eachChild(Step step) throws XMLStreamException, Unreadable {
        int own = depth;
        while (true) {
            int event = next();
            if (event == XMLStreamConstants.END_ELEMENT && depth < own) {
                return;
            }
            if (event == XMLStreamConstants.START_ELEMENT) {
                int child = depth;
                step.read();
                while (depth >= child) {
                    next();
                }
            }
        }
    }

    /** The text of the current element and those in it, stripped; ends behind that element. */
    public String text() throws XMLStreamException {
        int own = depth;
        StringBuilder text = new StringBuilder();
        while (depth >= own) {
            int event = next();
            if (event == XMLStreamConstants.CHARACTERS
                    || event == XMLStreamConstants.CDATA
                    || event == XMLStreamConstants.SPACE) {
                text.append(
                        reader.getTextCharacters(), reader.getTextStart(), reader.getTextLength());
            }
            if (text.length() > LONGEST_TEXT) {
                throw new Refused("has a text that is too long", reader);
            }
        }
        return text.toString().strip();
    }

    /** Name of the current element without prefix. */
    public String name() {
        return reader.getLocalName();
    }

    /** Its namespace; empty when it has none. */
    public String namespace() {
        String namespace = reader.getNamespaceURI();
        return namespace == null ? "" : namespace;
    }

    /** An attribute without namespace; empty when there is none. */
    public String attribute(String name) {
        for (int i = 0; i < reader.getAttributeCount(); i++) {
            String namespace = reader.getAttributeNamespace(i);
            if (reader.getAttributeLocalName(i).equals(name)
                    && (namespace == null || namespace.isEmpty())) {
                return reader.getAttributeValue(i).strip();
            }
        }
        return "";
    }

    /** Line of the file, from 1. */
    public int line() {
        return Math.max(0, reader.getLocation().getLineNumber());
    }

    /** Well-formed, but nothing that is read. */
    private static final class Refused extends XMLStreamException {
        private static final long serialVersionUID = 1L;

        private final String what;

        Refused(String what) {
            super(what);
            this.what = what;
        }

        Refused(String what, XMLStreamReader at) {
            super(what, at.getLocation());
            this.what = what;
        }
    }
}
