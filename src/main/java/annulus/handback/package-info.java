/**
 * When a joint may be handed back, on the shop's clock: release policy, opening hours, promise,
 * latest start, and which options are no better in anything. Pure: nothing here reads a clock.
 */
package annulus.handback;
