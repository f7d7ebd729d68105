/**
 * Declared rules over the compound classes: every rule is tried on every class, and each that
 * speaks leaves a typed finding with the figures it looked at. Nothing depends on the order of the
 * rules.
 */
package annulus.select;
