package annulus.store;

import java.time.Instant;

/**
 * A bore as it was when a part was fitted in it.
 *
 * @param bore name of the bore
 * @param job reference of the job
 * @param at when the joint was closed
 * @param meanMm mean diameter at 20 °C, mm
 * @param plusMinusUm its expanded uncertainty at 95 %, µm on the diameter
 */
public record BoreFit(String bore, String job, Instant at, double meanMm, double plusMinusUm) {}
