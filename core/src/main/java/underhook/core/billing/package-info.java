/**
 * What a day costs the customer: quantities from the log, rounded as the tariff says, times whole cents.
 *
 * <p>Every line shows what was measured, what it was rounded to and why. It is the basis of an invoice, not
 * the invoice: taxes and agreements that no tariff line names are not in it.
 */
@NullMarked
package underhook.core.billing;

import org.jspecify.annotations.NullMarked;
