package annulus.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import annulus.catalog.Confidence;
import annulus.catalog.Instrument;
import annulus.catalog.Provenance;
import annulus.measure.FormLimits;
import annulus.measure.MeasuredDiameter;
import annulus.measure.Reading;
import annulus.measure.Side;
import annulus.quantity.Estimate;
import annulus.quantity.InvalidValue;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The gap of two members worked by hand; all gaps radial. */
class GapTest {
  private static final FormLimits LIMITS = new FormLimits(20, 20, 30, 1, 0.5, 11.5, 20);

  private static MeasuredDiameter measured(Side side, double... mm) {
    Provenance shop = new Provenance("shop", Confidence.LOW);
    Instrument.Span span = new Instrument.Span(side.use(), 0, 100, 4, 1, 2, 0, shop);
    Instrument gauge = new Instrument("gauge", "Gauge", List.of(span));
    List<Reading> readings = Arrays.stream(mm).mapToObj(Reading::of).toList();
    return MeasuredDiameter.of(side, readings, gauge, 20, 0, Estimate.exactly(11.5), LIMITS);
  }

  /** Bore 42.04 to 42.08, part 41.99 to 42.01: (42.06 - 42.00)/2, (42.08 - 41.99)/2, 0.03/2. */
  @Test
  void a_gap_is_half_the_difference_of_the_diameters() {
    Gap gap =
        Gap.of(measured(Side.BORE, 42.04, 42.06, 42.08), measured(Side.PART, 41.99, 42, 42.01));
    assertEquals(42.06, gap.nominalMm(), 1e-9);
    assertEquals(30, gap.meanUm(), 1e-6);
    assertEquals(45, gap.largestUm(), 1e-6);
    assertEquals(15, gap.smallestUm(), 1e-6);
  }

  /**
   * 30 µm ± 9.8 µm at 95 % by the factor 1.96: u = 5 µm. Normal quantiles: 1.959964 two-sided at 95
   * %, and 84.134 % below one standard uncertainty.
   */
  @Test
  void a_stated_gap_spreads_as_the_normal_law_says() {
    Gap gap = Gap.stated(42, 30, 9.8, 1.96);
    assertEquals(39.79982, gap.upperUm(0.95), 1e-4);
    assertEquals(20.20018, gap.lowerUm(0.95), 1e-4);
    assertEquals(2 * 39.79982, gap.oneSidedUm(0.95), 2e-4);
    assertEquals(0.8413447, gap.probabilityWithin(-1e6, 35), 1e-6);
    assertEquals(0.6826895, gap.probabilityWithin(25, 35), 1e-6);
    assertEquals(0.6826895, gap.largest().within(25, 35), 1e-6);
    assertThrows(InvalidValue.class, () -> Gap.stated(42, 30, 9.8, 0));
  }

  @Test
  void interference_leaves_no_room_on_one_side() {
    assertEquals(0, Gap.stated(42, -30, 9.8, 1.96).oneSidedUm(0.95));
  }
}
