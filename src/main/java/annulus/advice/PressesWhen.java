package annulus.advice;

/** When parts that are meant to be clear of each other may press. */
public enum PressesWhen {
  /** Where the readings are tightest, or at the temperature of assembly. */
  ON_THE_WAY_IN,
  /** At an end of the service range alone; they go together freely. */
  ONLY_IN_USE
}
