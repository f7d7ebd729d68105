/** A house built wrong on purpose; {@link annulus.ArchitectureTest} must find every fault. */
package annulus.badhouse;
