/**
 * How far a joint has cured: a temperature history, a rate that follows temperature, the reduced
 * time they add up to, the class's cure curve and its spread. Everything is closed form; nothing is
 * sampled. Reduced time is in hours at the class's reference temperature.
 */
package annulus.cure;
