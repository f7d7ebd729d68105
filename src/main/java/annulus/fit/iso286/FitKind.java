package annulus.fit.iso286;

/** Kind of fit by ISO 286-1 3.4: what two parts inside their limits can give. */
public enum FitKind {
  /** Never interferes; the limits may just touch. */
  CLEARANCE,
  /** May be loose or tight. */
  TRANSITION,
  /** Never loose; the limits may just touch. */
  INTERFERENCE
}
