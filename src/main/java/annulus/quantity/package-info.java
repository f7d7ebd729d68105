/**
 * The few unit-bearing value types and constants that everything else stands on: ranges, estimates,
 * checks that throw {@link annulus.quantity.InvalidValue}, exact conversions, locale-free numbers.
 */
package annulus.quantity;
