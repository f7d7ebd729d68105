package annulus.fit.iso286;

import static annulus.fit.FitData.TABLES;
import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;

import annulus.catalog.Confidence;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Printed values of ISO 286-1 and ANSI B4.2; "from memory" rows say so. */
class Iso286PublishedTest {
  private static final double[] INSIDE = {8, 15, 25, 40, 65, 100};

  private static LimitsOfSize limits(String text) {
    Designation.OfClass named = (Designation.OfClass) Designation.parse(text);
    return TABLES.limits(named.nominalMm(), named.toleranceClass());
  }

  private static Fit fit(String text) {
    Designation.OfFit named = (Designation.OfFit) Designation.parse(text);
    return TABLES.fit(named.nominalMm(), named.hole(), named.shaft());
  }

  /** ISO 286-1 Table 1, 6 to 120 mm, agreeing in four independent tables. */
  @ParameterizedTest
  @CsvSource({
    "IT5,6,8,9,11,13,15",
    "IT6,9,11,13,16,19,22",
    "IT7,15,18,21,25,30,35",
    "IT8,22,27,33,39,46,54",
    "IT9,36,43,52,62,74,87",
    "IT10,58,70,84,100,120,140",
    "IT11,90,110,130,160,190,220"
  })
  void standard_tolerances_are_the_printed_ones(
      ToleranceGrade grade, double a, double b, double c, double d, double e, double f) {
    double[] printed = {a, b, c, d, e, f};
    for (int i = 0; i < printed.length; i++) {
      assertEquals(printed[i], TABLES.toleranceUm(grade, INSIDE[i]));
    }
  }

  /** ISO 286-1 Tables 4 and 5: es of f, g; ei of k (4 to 7), m, n, p, r, s, u. */
  @ParameterizedTest
  @CsvSource({
    "12,-16,-6,1,7,12,18,23,28,33",
    "20,-20,-7,2,8,15,22,28,35,41",
    "27,-20,-7,2,8,15,22,28,35,48",
    "35,-25,-9,2,9,17,26,34,43,60",
    "45,-25,-9,2,9,17,26,34,43,70",
    "60,-30,-10,2,11,20,32,41,53,87",
    "75,-30,-10,2,11,20,32,43,59,102",
    "90,-36,-12,3,13,23,37,51,71,124",
    "110,-36,-12,3,13,23,37,54,79,144"
  })
  void fundamental_deviations_of_shafts_are_the_printed_ones(
      double mm,
      double f,
      double g,
      double k,
      double m,
      double n,
      double p,
      double r,
      double s,
      double u) {
    assertAll(
        () -> assertEquals(f, limits(mm + " f7").upperUm()),
        () -> assertEquals(g, limits(mm + " g6").upperUm()),
        () -> assertEquals(k, limits(mm + " k6").lowerUm()),
        () -> assertEquals(m, limits(mm + " m6").lowerUm()),
        () -> assertEquals(n, limits(mm + " n6").lowerUm()),
        () -> assertEquals(p, limits(mm + " p6").lowerUm()),
        () -> assertEquals(r, limits(mm + " r6").lowerUm()),
        () -> assertEquals(s, limits(mm + " s6").lowerUm()),
        () -> assertEquals(u, limits(mm + " u6").lowerUm()));
  }

  /** Printed limits (ISO 286-1); the last five rows from memory of the standard's examples. */
  @ParameterizedTest
  @CsvSource({
    "15 j6,-3,8",
    "25 j6,-4,9",
    "40 j6,-5,11",
    "60 j6,-7,12",
    "40 K7,-18,7",
    "40 M7,-25,0",
    "40 N7,-33,-8",
    "40 P7,-42,-17",
    "35 S7,-59,-34",
    "25 K7,-15,6",
    "25 N7,-28,-7",
    "25 P7,-35,-14",
    "40 js7,-12.5,12.5",
    "40 JS7,-12.5,12.5",
    "25 S6,-44,-31",
    "280 M6,-41,-9",
    "2 N9,-29,-4",
    "40 N9,-62,0",
    "3 P7,-16,-6"
  })
  void limits_are_the_printed_ones(String text, double lower, double upper) {
    LimitsOfSize limits = limits(text);
    assertEquals(lower, limits.lowerUm());
    assertEquals(upper, limits.upperUm());
  }

  /** Printed fits, ISO 286 and ANSI B4.2 tables: greatest and least clearance. */
  @ParameterizedTest
  @CsvSource({
    "34 H11/c11,440,120,CLEARANCE",
    "40 H7/s6,-18,-59,INTERFERENCE",
    "40 H7/u6,-35,-76,INTERFERENCE",
    "50 H8/f7,89,25,CLEARANCE",
    "25 H7/g6,41,7,CLEARANCE",
    "25 H7/h6,34,0,CLEARANCE",
    "25 G7/h6,41,7,CLEARANCE",
    "25 H7/n6,6,-28,TRANSITION",
    "25 H7/p6,-1,-35,INTERFERENCE",
    "10 K7/h6,14,-10,TRANSITION",
    "10 P7/h6,0,-24,INTERFERENCE",
    "10 U7/h6,-13,-37,INTERFERENCE",
    "12 K7/h6,17,-12,TRANSITION",
    "12 N7/h6,6,-23,TRANSITION",
    "8 S7/h6,-8,-32,INTERFERENCE",
    "13 P7/h6,0,-29,INTERFERENCE"
  })
  void fits_are_the_printed_ones(String text, double greatest, double least, FitKind kind) {
    Fit fit = fit(text);
    assertEquals(greatest, fit.greatestDiametralClearanceUm());
    assertEquals(least, fit.leastDiametralClearanceUm());
    assertEquals(greatest / 2, fit.greatestRadialGapUm());
    assertEquals(least / 2, fit.leastRadialGapUm());
    assertEquals(kind, fit.kind());
  }

  /** ISO 286-1: the lower end of a band is excluded, the upper included. */
  @Test
  void a_size_on_a_band_edge_belongs_to_the_band_below() {
    assertEquals(21, limits("30 H7").upperUm());
    assertEquals(25, limits("30.001 H7").upperUm());
    assertEquals(25, limits("50 H7").upperUm());
  }

  @Test
  void limits_rest_on_the_least_sure_of_their_rows() {
    assertEquals(Confidence.HIGH, TABLES.basis(40, ToleranceClass.parse("k6")).confidence());
    assertEquals(Confidence.MEDIUM, TABLES.basis(40, ToleranceClass.parse("k12")).confidence());
    assertEquals(
        "ISO 286-1:2010 Table 1; ISO 286-1:2010 Table 5",
        TABLES.basis(40, ToleranceClass.parse("S7")).source());
  }
}
