package annulus.catalog;

/** The worst that follows where a caution is not heeded, gravest first. */
public enum Severity {
  HURTS_PEOPLE,
  JOINT_MAY_FAIL,
  PART_MAY_BE_DAMAGED,
  ADVICE
}
