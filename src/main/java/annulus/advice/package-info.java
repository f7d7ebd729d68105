/**
 * One {@link annulus.advice.JointOrder} in, one {@link annulus.advice.Advice} out. The only place
 * that calls all the packages below it.
 */
package annulus.advice;
