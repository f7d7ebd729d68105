package annulus.catalog;

/** The four stages of cure. They are never merged into one number. */
public enum Stage {
  /** The part stays by itself: do not touch before. */
  FIXTURE,
  /** Other parts may be assembled on it, no torque. */
  HANDLING,
  /** Limited use: the shop's own careful test, nobody else. */
  FUNCTIONAL,
  /** Full cure: may be handed over. */
  FULL
}
