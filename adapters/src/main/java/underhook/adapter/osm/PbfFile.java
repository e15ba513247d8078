package underhook.adapter.osm;

import java.io.BufferedInputStream;
import java.io.ByteArrayInputStream;
import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.BitSet;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Set;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;
import org.apache.commons.compress.compressors.lz4.BlockLZ4CompressorInputStream;

/**
 * A PBF file: a row of blobs, each unpacked on its own. Mutable: after the first reading it knows which
 * blobs hold what and passes over the rest.
 *
 * @source OSM-PBF sections on encoding, blobs, required features and largest sizes
 */
final class PbfFile implements OsmFile {
    private static final int LONGEST_HEADER = 64 * 1024;
    private static final int LONGEST_BLOB = 32 * 1024 * 1024;

    /** More than deflate and LZ4 can pack at best: 1032 and 255 to one. */
    private static final long BEST_RATIO = 1040;

    private static final Set<String> KNOWN_FEATURES = Set.of("OsmSchema-V0.6", "DenseNodes");

    private final Path file;
    private final Map<Part, BitSet> blobsWith = new EnumMap<>(Part.class);
    private boolean isKnown;

    PbfFile(Path file) {
        this.file = file;
        for (Part part : Part.values()) {
            blobsWith.put(part, new BitSet());
        }
    }

    @Override
    public void read(Set<Part> wanted, Sink sink) throws IOException {
        long length = Files.size(file);
        TotalLimit total = TotalLimit.of(length);
        try (DataInputStream in =
                new DataInputStream(new BufferedInputStream(Files.newInputStream(file)))) {
            boolean headerSeen = false;
            long left = length;
            for (int blob = 0; left > 0; blob++) {
                Header header = header(in, left);
                left = header.left;
                if (!headerSeen && !header.type.equals("OSMHeader")) {
                    throw notPbf();
                }
                if (header.type.equals("OSMHeader")) {
                    checkFeatures(unpack(in.readNBytes(header.size), total));
                    headerSeen = true;
                } else if (header.type.equals("OSMData") && mayHold(blob, wanted)) {
                    readBlock(blob, unpack(in.readNBytes(header.size), total), wanted, sink);
                } else {
                    in.skipNBytes(header.size);
                }
            }
            if (!headerSeen) {
                throw notPbf();
            }
        } catch (EOFException e) {
            throw cutOff();
        }
        isKnown = true;
    }

    /**
     * What stands before a blob.
     *
     * @param size bytes of the blob
     * @param left bytes of the file behind the blob
     */
    private record Header(String type, int size, long left) {}

    private static Header header(DataInputStream in, long left) throws IOException {
        if (left < 4) {
            throw cutOff();
        }
        int length = in.readInt();
        if (length <= 0 || length > LONGEST_HEADER || length > left - 4) {
            throw notPbf();
        }
        byte[] bytes = in.readNBytes(length);
        PbfMessage message = new PbfMessage(bytes, 0, bytes.length);
        String type = "";
        long size = -1;
        for (int field = message.next(); field != 0; field = message.next()) {
            switch (field) {
                case 1 -> type = message.takeText();
                case 3 -> size = message.takeNumber();
                default -> message.skip();
            }
        }
        if (size < 0) {
            throw PbfMessage.broken();
        }
        if (size > LONGEST_BLOB) {
            throw OsmFault.tooLarge("has a block of more than 32 MiB", "at most 32 MiB");
        }
        long behind = left - 4 - length - size;
        if (behind < 0) {
            throw cutOff();
        }
        return new Header(type, (int) size, behind);
    }

    private static PbfMessage unpack(byte[] blob, TotalLimit total) throws IOException {
        PbfMessage message = new PbfMessage(blob, 0, blob.length);
        PbfMessage data = PbfMessage.EMPTY;
        int packing = 0;
        long rawSize = -1;
        for (int field = message.next(); field != 0; field = message.next()) {
            switch (field) {
                case 1, 3, 4, 5, 6, 7 -> {
                    packing = field;
                    data = message.takeMessage();
                }
                case 2 -> rawSize = message.takeNumber();
                default -> message.skip();
            }
        }
        if (packing == 1) {
            total.add(data.length());
            return data;
        }
        if (rawSize < 0 || rawSize > LONGEST_BLOB) {
            throw OsmFault.tooLarge("unpacks to a block of more than 32 MiB", "at most 32 MiB");
        }
        if (rawSize > BEST_RATIO * (data.length() + 1L)) {
            throw PbfMessage.broken();
        }
        total.add(rawSize);
        byte[] raw =
                switch (packing) {
                    case 3 -> inflate(data.copy(), (int) rawSize);
                    case 6 -> unpackLz4(data.copy(), (int) rawSize);
                    case 4, 5, 7 ->
                            throw OsmFault.unreadable(
                                    "is packed in a way that is not read",
                                    packing == 4 ? "lzma" : packing == 5 ? "bzip2" : "zstd",
                                    "none, zlib or lz4");
                    default -> throw PbfMessage.broken();
                };
        return new PbfMessage(raw, 0, raw.length);
    }

    private static byte[] inflate(byte[] data, int rawSize) throws OsmFault {
        Inflater inflater = new Inflater();
        try {
            inflater.setInput(data);
            byte[] raw = new byte[rawSize];
            int at = 0;
            while (at < rawSize) {
                int count = inflater.inflate(raw, at, rawSize - at);
                if (count == 0) {
                    throw PbfMessage.broken();
                }
                at += count;
            }
            // The check sum behind the data is looked at only when more is asked for.
            if (inflater.inflate(new byte[1]) != 0 || !inflater.finished()) {
                throw PbfMessage.broken();
            }
            return raw;
        } catch (DataFormatException e) {
            OsmFault fault = PbfMessage.broken();
            fault.initCause(e);
            throw fault;
        } finally {
            inflater.end();
        }
    }

    private static byte[] unpackLz4(byte[] data, int rawSize) throws OsmFault {
        try (BlockLZ4CompressorInputStream in =
                new BlockLZ4CompressorInputStream(new ByteArrayInputStream(data))) {
            byte[] raw = in.readNBytes(rawSize);
            if (raw.length != rawSize || in.read() >= 0) {
                throw PbfMessage.broken();
            }
            return raw;
        } catch (OsmFault e) {
            throw e;
        } catch (IOException | IllegalArgumentException | IndexOutOfBoundsException e) {
            // The library throws all three for damaged data.
            OsmFault fault = PbfMessage.broken();
            fault.initCause(e);
            throw fault;
        }
    }

    private static void checkFeatures(PbfMessage header) throws OsmFault {
        for (int field = header.next(); field != 0; field = header.next()) {
            if (field != 4) {
                header.skip();
                continue;
            }
            String feature = header.takeText();
            if (!KNOWN_FEATURES.contains(feature)) {
                throw OsmFault.version(
                        "asks for a feature that is not known",
                        feature,
                        String.join(" and ", KNOWN_FEATURES.stream().sorted().toList()));
            }
        }
    }

    private boolean mayHold(int blob, Set<Part> wanted) {
        return !isKnown || wanted.stream().anyMatch(part -> part(part).get(blob));
    }

    private void readBlock(int blob, PbfMessage data, Set<Part> wanted, Sink sink) throws OsmFault {
        EnumSet<Part> held = new PbfBlock(data).read(wanted, sink);
        held.forEach(part -> part(part).set(blob));
    }

    private BitSet part(Part part) {
        return blobsWith.computeIfAbsent(part, p -> new BitSet());
    }

    private static OsmFault notPbf() {
        return OsmFault.unreadable("is no PBF file of OpenStreetMap", "", "");
    }

    private static OsmFault cutOff() {
        return OsmFault.unreadable("is cut off", "", "");
    }
}
