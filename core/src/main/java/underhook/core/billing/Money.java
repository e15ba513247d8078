package underhook.core.billing;

import java.util.Objects;

/**
 * An amount of money in whole cents.
 *
 * @param currency as the tariff writes it
 */
public record Money(long cents, String currency) {
    public Money {
        Objects.requireNonNull(currency, "currency");
    }

    /**
     * The sum.
     *
     * @throws IllegalArgumentException for another currency
     */
    public Money plus(Money other) {
        if (!currency.equals(other.currency)) {
            throw new IllegalArgumentException(
                    currency + " and " + other.currency + " do not add.");
        }
        return new Money(Math.addExact(cents, other.cents), currency);
    }
}
