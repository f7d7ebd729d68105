package annulus.fit;

/** The fitted surface of a rolling bearing. */
public enum BearingRing {
  /** Inner ring on a shaft: the bearing's bore. */
  BORE,
  /** Outer ring in a housing: the bearing's outside diameter. */
  OUTSIDE
}
