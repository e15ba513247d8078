/**
 * Reads a job folder as docs/formats.md describes it.
 *
 * <p>{@link underhook.adapter.job.JobFolderReader} reads every file that job.yaml names, however faulty
 * the others are, and gives the job or all the faults at once. What a place or a load is about, rather
 * than a text that cannot be read, is a finding of the job: a place off the terrain, a listed elevation
 * far from it. Rasters and reference systems come through ports.
 */
@NullMarked
package underhook.adapter.job;

import org.jspecify.annotations.NullMarked;
