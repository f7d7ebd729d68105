/**
 * How two diameters fit: press-fit mechanics, change with temperature, rolling-bearing defaults and
 * (in {@link annulus.fit.iso286}) limits and fits. Pure calculations.
 */
package annulus.fit;
