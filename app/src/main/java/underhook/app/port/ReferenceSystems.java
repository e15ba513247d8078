package underhook.app.port;

import underhook.core.finding.Outcome;

/** Finds reference systems by code or text. */
public interface ReferenceSystems {
    /** By "EPSG:n", a bare number, or WKT text; refused with REFERENCE_SYSTEM_UNKNOWN. */
    Outcome<ReferenceSystem> find(String codeOrWkt);
}
