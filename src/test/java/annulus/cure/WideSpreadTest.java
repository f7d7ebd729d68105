package annulus.cure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.quantity.InvalidValue;
import org.junit.jupiter.api.Test;

/**
 * Found by the laws over drawn catalogues: allowed rows together may be less sure than any alone.
 */
class WideSpreadTest {
  @Test
  void factors_that_are_each_very_unsure_add_up_to_a_spread_that_is_still_a_number() {
    Spread wide = Spread.combine(new Spread(4), new Spread(4), new Spread(4));
    assertEquals(Math.sqrt(48), wide.sigmaLn(), 1e-12);
    assertTrue(Double.isFinite(new Spread(20).factor(0.999)));
    assertThrows(InvalidValue.class, () -> new Spread(20.1));
    assertThrows(InvalidValue.class, () -> new Spread(Double.NaN));
  }
}
