package underhook.adapter.job;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;
import underhook.adapter.job.FileReference.StatedSystem;
import underhook.adapter.job.text.Fields;
import underhook.adapter.job.text.Node;
import underhook.adapter.job.text.Source;
import underhook.adapter.job.text.Source.At;
import underhook.adapter.job.text.Source.Found;
import underhook.adapter.job.text.TextFile;
import underhook.app.port.ReferenceSystem;
import underhook.app.port.ReferenceSystems;
import underhook.core.finding.FindingCode;

/**
 * The folder of a job; nothing outside of it is read.
 *
 * @param job job.yaml, where what is wrong with a file's name is reported
 */
record Folder(Path path, Source job, ReferenceSystems systems) {
    private static final long MOST_WKT_BYTES = 1L << 20;

    /** A file of the folder by its name in job.yaml; empty, with a fault, when it is not there. */
    Optional<Path> find(At at, String name) {
        String allowed = "a file inside the job folder";
        try {
            Path relative = Path.of(name);
            boolean escapes =
                    relative.isAbsolute()
                            || name.indexOf('\\') >= 0
                            || name.indexOf(':') >= 0
                            || path.resolve(relative).normalize().equals(path.normalize())
                            || !path.resolve(relative).normalize().startsWith(path.normalize());
            if (!name.isBlank() && !escapes) {
                Path file = path.resolve(relative);
                if (!Files.isRegularFile(file)) {
                    job.fault(
                            FindingCode.FILE_MISSING,
                            at,
                            "names a file that is not there",
                            new Found(name, allowed));
                    return Optional.empty();
                }
                if (file.toRealPath().startsWith(path.toRealPath())) {
                    return Optional.of(file);
                }
            }
        } catch (InvalidPathException | IOException refused) {
            // reported below: such a name is no file of the folder
        }
        job.fault(
                FindingCode.FILE_UNREADABLE,
                at,
                "names no file of the job folder",
                new Found(name, allowed + ", written with /"));
        return Optional.empty();
    }

    /** A reference system as stated: a code, WKT text, or a mapping that names a file with WKT. */
    StatedSystem readSystem(Fields fields, Node stated) {
        boolean isOwn = fields.findNode("file").isPresent();
        Optional<String> text = Optional.empty();
        if (stated instanceof Node.Scalar scalar) {
            text = Optional.of(scalar.text());
        } else if (stated instanceof Node.Mapping mapping) {
            Fields details = fields.within(mapping);
            String name = details.text("file");
            details.refuseUnknown();
            if (!name.isEmpty()) {
                text =
                        find(new At(details.line(), "crs.file"), name)
                                .flatMap(file -> readWkt(file, name));
            }
        } else {
            fields.fault(
                    FindingCode.FIELD_UNREADABLE,
                    "crs",
                    "is " + stated.kind(),
                    Found.allowing("EPSG:n, WKT text, or {file: name.wkt}"));
        }
        return new StatedSystem(
                true, isOwn, text.flatMap(code -> findSystem(new At(stated.line(), "crs"), code)));
    }

    /** A system by code or WKT; empty, with a fault, when there is none. */
    Optional<ReferenceSystem> findSystem(At at, String codeOrWkt) {
        return systems.find(codeOrWkt)
                .fold(
                        (system, remarks) -> Optional.of(system),
                        refusals -> {
                            job.fault(
                                    FindingCode.REFERENCE_SYSTEM_UNKNOWN,
                                    at,
                                    "is no known reference system",
                                    new Found(
                                            codeOrWkt,
                                            "EPSG:n or WKT; " + refusals.get(0).message()));
                            return Optional.empty();
                        });
    }

    private Optional<String> readWkt(Path file, String name) {
        return TextFile.read(file, new Source(name, job.faults()), MOST_WKT_BYTES);
    }
}
