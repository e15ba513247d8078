package underhook.adapter.job.text;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import underhook.adapter.job.text.Source.At;
import underhook.adapter.job.text.Source.Found;
import underhook.core.finding.FindingCode;

/** Reads whole files of a bounded size as UTF-8. */
public final class TextFile {
    private TextFile() {}

    /** The text without byte order mark; empty, with a fault, when it cannot be had. */
    public static Optional<String> read(Path file, Source source, long mostBytes) {
        At whole = new At(0, "");
        byte[] bytes = {};
        try {
            long size = Files.size(file);
            if (size > mostBytes) {
                source.fault(
                        FindingCode.TOO_LARGE,
                        whole,
                        "is too large",
                        new Found(size + " bytes", "at most " + mostBytes + " bytes"));
                return Optional.empty();
            }
            bytes = Files.readAllBytes(file);
            String text =
                    StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
            if (text.indexOf('\0') >= 0) {
                // Two bytes for each letter, or no text at all.
                throw new CharacterCodingException();
            }
            return Optional.of(text.startsWith("\ufeff") ? text.substring(1) : text);
        } catch (CharacterCodingException notUtf8) {
            source.fault(
                    FindingCode.FILE_UNREADABLE,
                    new At(lineOfFirstOdd(bytes), ""),
                    "is no UTF-8 text",
                    Found.allowing("text saved as UTF-8"));
        } catch (IOException unreadable) {
            source.fault(
                    FindingCode.FILE_UNREADABLE,
                    whole,
                    "cannot be read",
                    Found.allowing("a readable file"));
        }
        return Optional.empty();
    }

    /** The line, from 1, of the first letter that no UTF-8 text has there. */
    private static int lineOfFirstOdd(byte[] bytes) {
        String text = new String(bytes, StandardCharsets.UTF_8); // what is odd becomes U+FFFD
        int line = 1;
        for (int i = 0; i < text.length(); i++) {
            char letter = text.charAt(i);
            if (letter == '\0' || letter == '\ufffd') {
                break;
            }
            line += letter == '\n' ? 1 : 0;
        }
        return line;
    }
}
