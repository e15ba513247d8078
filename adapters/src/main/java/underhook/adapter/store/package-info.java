/**
 * Keeps jobs, each in one SQLite file: every revision of its files, and the plans made from them.
 *
 * <p>Files are kept once by their hash. A change is one transaction that is forced to the disk before it
 * counts (write-ahead log, full synchronisation). The format's number is the file's {@code user_version};
 * migrations are the {@code V….sql} files beside the classes.
 */
@NullMarked
package underhook.adapter.store;

import org.jspecify.annotations.NullMarked;
