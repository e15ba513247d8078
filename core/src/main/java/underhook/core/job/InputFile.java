package underhook.core.job;

/**
 * A file that the job was read from.
 *
 * @param path as job.yaml names it
 * @param role what it was read as: loads, places, terrain …
 * @param licence as stated, empty when not stated
 * @param attribution as stated, empty when not stated
 */
public record InputFile(String path, String role, String licence, String attribution) {}
