package annulus.measure;

/** What a measurement proves about a range. */
public enum Verdict {
  INSIDE,
  OUTSIDE,
  /** The range's end lies within the uncertainty: neither is proved. */
  NOT_DECIDED
}
