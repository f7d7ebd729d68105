package annulus.measure;

/** What the reader of a measured diameter must know besides the figures. */
public enum Note {
  /** One reading: form and repeatability are unseen; a default stands for the repeatability. */
  ONE_READING,
  /** Several readings, some without an angle: their spread may be form or noise. */
  ANGLES_NOT_GIVEN,
  /** Two contacts never see three, five or seven lobes; looking round by them proves nothing. */
  TWO_POINT_BLIND_TO_ODD_LOBES,
  /** Three contacts at 120 degrees never see an oval, nor five or seven lobes. */
  THREE_POINT_BLIND_TO_OVAL,
  /** Largest less smallest diameter at one depth is above the limit. */
  OVAL,
  /** The diameters at different depths differ by more than the limit. */
  TAPERED,
  /** Flat inside jaws bridge the curve; half the possible error was added to the diameter. */
  JAWS_READ_SMALL,
  /** Readings of the same place differ more than the instrument explains: measure again. */
  READINGS_DISAGREE,
  /** Readings without a place differ more than the instrument explains: form, or a slip. */
  READINGS_SPREAD,
  /** The instrument's error limit rules the budget: more readings help little. */
  INSTRUMENT_RULES
}
