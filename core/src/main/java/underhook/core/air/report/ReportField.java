package underhook.core.air.report;

/** One decoded value for printing; the name carries its unit. */
public record ReportField(String name, String value) {}
