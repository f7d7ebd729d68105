package annulus.catalog;

/** How far a row of data may be trusted. */
public enum Confidence {
  /** Printed in a named standard or handbook and checked against it. */
  HIGH,
  /** A named source, merged, rounded or recalled. */
  MEDIUM,
  /** Practice of the trade or memory only: wide on purpose. */
  LOW
}
