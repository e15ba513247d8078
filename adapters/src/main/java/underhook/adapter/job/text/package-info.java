/**
 * Text of a job's files, read strictly: every value knows its file, line and field.
 *
 * <p>YAML, JSON, CSV and XLSX all end as {@link underhook.adapter.job.text.Fields}, one for each
 * mapping, row or set of properties, which hands out typed values and notes a {@link
 * underhook.app.port.Fault} for whatever it cannot read as meant. Nothing here throws for what a file
 * holds; a value that came with a fault is a harmless filler, and whoever builds records looks first
 * whether faults were noted.
 */
@NullMarked
package underhook.adapter.job.text;

import org.jspecify.annotations.NullMarked;
