package annulus.fit;

import static annulus.fit.FitData.BEARINGS;
import static annulus.fit.FitData.TABLES;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.fit.iso286.Fit;
import annulus.fit.iso286.ToleranceClass;
import annulus.quantity.InvalidValue;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** ISO 492 class Normal and the fits printed for it in a bearing table. */
class BearingLimitsPublishedTest {
  @ParameterizedTest
  @CsvSource({
    "BORE,15,-8",
    "BORE,25,-10",
    "BORE,30,-10",
    "BORE,40,-12",
    "BORE,60,-15",
    "BORE,100,-20",
    "OUTSIDE,15,-8",
    "OUTSIDE,25,-9",
    "OUTSIDE,42,-11",
    "OUTSIDE,52,-13",
    "OUTSIDE,100,-15",
    "OUTSIDE,130,-18"
  })
  void lower_deviations_are_the_printed_ones(BearingRing ring, double mm, double lower) {
    assertEquals(lower, BEARINGS.limits(ring, mm).lowerUm());
    assertEquals(0, BEARINGS.limits(ring, mm).upperUm());
  }

  /** Least and greatest clearance of a class Normal bearing in a housing. */
  @ParameterizedTest
  @CsvSource({
    "42,H7,0,36",
    "42,J7,-11,25",
    "42,K7,-18,18",
    "42,M7,-25,11",
    "42,N7,-33,3",
    "42,P7,-42,-6",
    "52,H7,0,43",
    "52,K7,-21,22",
    "52,N7,-39,4",
    "52,P7,-51,-8"
  })
  void housing_fits_are_the_printed_ones(double mm, String housing, double least, double most) {
    Fit fit =
        new Fit(
            TABLES.limits(mm, ToleranceClass.parse(housing)),
            BEARINGS.limits(BearingRing.OUTSIDE, mm));
    assertEquals(least, fit.leastDiametralClearanceUm());
    assertEquals(most, fit.greatestDiametralClearanceUm());
  }

  /** Greatest clearance and greatest interference of a shaft in a class Normal bore. */
  @ParameterizedTest
  @CsvSource({"25,g6,20,3", "25,h6,13,10", "25,j6,4,19", "40,g6,25,3", "40,h6,16,12", "40,j6,5,23"})
  void shaft_fits_are_the_printed_ones(double mm, String shaft, double loose, double tight) {
    Fit fit =
        new Fit(
            BEARINGS.limits(BearingRing.BORE, mm), TABLES.limits(mm, ToleranceClass.parse(shaft)));
    assertEquals(loose, fit.greatestDiametralClearanceUm());
    assertEquals(tight, fit.greatestDiametralInterferenceUm());
  }

  @Test
  void a_size_beyond_the_table_is_refused_with_the_table_range() {
    InvalidValue refused =
        assertThrows(InvalidValue.class, () -> BEARINGS.limits(BearingRing.BORE, 600));
    assertTrue(refused.allowed().contains("0.6 to 500 mm"), refused.allowed());
  }
}
