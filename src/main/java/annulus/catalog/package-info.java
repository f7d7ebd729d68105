/**
 * What the shop can work with: materials, finishes, compound classes, primers, instruments and the
 * numbers of the policy, as immutable records that carry their source.
 */
package annulus.catalog;
