/**
 * What stands in the cabinet: lots and their use-by, the ledger of movements, first expired first
 * out, the use rate and when to order, the shop's own labels, and which joints the cabinet serves.
 */
package annulus.stock;
