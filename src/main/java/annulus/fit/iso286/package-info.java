/**
 * ISO 286-1 limits and fits to 500 mm: designations, tolerance grades, fundamental deviations,
 * limits of size and fits. All sizes and deviations here are on the diameter; {@link
 * annulus.fit.iso286.Fit} gives the radial figures beside them.
 */
package annulus.fit.iso286;
