package annulus.exchange;

import annulus.advice.Member;
import annulus.catalog.Instrument;
import annulus.fit.BearingLimits;
import annulus.fit.BearingRing;
import annulus.fit.iso286.LimitsOfSize;
import annulus.measure.Reading;
import annulus.measure.Side;
import annulus.quantity.Numbers;
import java.util.List;

/**
 * Stands in for the measurement of a bearing ring that nobody measured.
 *
 * @param reading the middle of the tolerance
 * @param instrument an "instrument" whose error limit is half the tolerance
 * @param words the tolerance in words
 */
record BearingStandIn(Reading reading, Instrument instrument, String words) {

  /** A bearing's bore stands in for a bore, its outside for a part. */
  static BearingStandIn of(BearingLimits table, Side side, double nominalMm) {
    BearingRing ring = side == Side.BORE ? BearingRing.BORE : BearingRing.OUTSIDE;
    LimitsOfSize limits = table.limits(ring, nominalMm);
    double middle = nominalMm + (limits.lowerUm() + limits.upperUm()) / 2000;
    Instrument.Use use = side == Side.BORE ? Instrument.Use.INSIDE : Instrument.Use.OUTSIDE;
    Instrument.Span span =
        new Instrument.Span(
            use,
            0,
            500,
            limits.toleranceUm() / 2,
            0.1,
            3,
            0,
            table.row(ring, nominalMm).provenance());
    String words =
        "bearing "
            + (side == Side.BORE ? "bore " : "outside ")
            + Numbers.plain(nominalMm)
            + " mm, class Normal: "
            + Numbers.signed(limits.lowerUm(), 0)
            + " to "
            + Numbers.signed(limits.upperUm(), 0)
            + " µm on the diameter";
    return new BearingStandIn(
        Reading.of(middle),
        new Instrument(Member.BY_TOLERANCE, "class Normal tolerance of the bearing", List.of(span)),
        words);
  }
}
