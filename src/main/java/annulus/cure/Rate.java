package annulus.cure;

/**
 * How fast a joint cures at a temperature, relative to the rate at the reference temperature. Zero
 * below the minimum, held above the highest temperature the data covers, never falling as it gets
 * warmer.
 */
public sealed interface Rate permits ArrheniusRate, SlowestRate {
  /**
   * The relative rate at a temperature.
   *
   * @param celsius temperature, °C
   * @return the rate, 1 at the reference temperature, without unit
   */
  double at(double celsius);

  /** Below this temperature, °C, nothing cures; at it the rate counts. */
  double minimumC();

  /** Above this temperature, °C, the rate stays what it is there. */
  double holdAboveC();

  /** The temperature, °C, at which the rate is 1. */
  double referenceC();
}
