package annulus.advice;

/** Orders of joints that press, with the gap stated and clean polished faces. */
final class PressedJoint {
  private PressedJoint() {}

  static OrderText of(
      String bore, String part, double diameterMm, double radialUm, double plusMinusUm) {
    return new OrderText()
        .set("bore.readingsMm", null)
        .set("part.readingsMm", null)
        .set("bore.instrument", null)
        .set("part.instrument", null)
        .set("bore.material", bore)
        .set("part.material", part)
        .set("bore.finish", "polished")
        .set("part.finish", "polished")
        .set("diameterMm", diameterMm)
        .set("radialGapUm", radialUm)
        .set("radialGapPlusMinusUm", plusMinusUm)
        .set("temperatureC", 20);
  }
}
