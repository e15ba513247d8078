/**
 * loads.csv and findings.csv: what a person opens in a spreadsheet.
 *
 * <p>RFC 4180 with line feeds, UTF-8, decimal points. A text that a spreadsheet would run as a formula
 * gets an apostrophe in front. Plan, caution and attribution stand in the last columns of each row,
 * because such a file has no other place for them.
 */
@NullMarked
package underhook.adapter.table;

import org.jspecify.annotations.NullMarked;
