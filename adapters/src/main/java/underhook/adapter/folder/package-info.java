/**
 * The output folder: all files of a run come in together, or none does.
 *
 * <p>Files are written beside the old ones first and then moved over them, so a reader of the folder meets
 * one run or the other. A refusal moves what an earlier run left into a folder of its own, so that no old
 * card lies beside it. One process at a time has the folder.
 */
@NullMarked
package underhook.adapter.folder;

import org.jspecify.annotations.NullMarked;
