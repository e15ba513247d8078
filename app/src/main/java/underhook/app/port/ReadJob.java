package underhook.app.port;

import underhook.core.geo.Ground;
import underhook.core.job.Job;

/** A job and the ground it lies on. */
public record ReadJob(Job job, Ground ground) {}
