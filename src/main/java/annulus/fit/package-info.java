/** Gap and interference of a part in a bore, and what the fit does to both members. */
package annulus.fit;
