package underhook.core.plan;

import underhook.core.finding.FindingCode;
import underhook.core.job.LoadId;

/** A load that is not in the plan, and why. */
public record LeftOut(LoadId load, FindingCode code, String message) {}
