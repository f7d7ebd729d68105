package annulus.catalog;

/** What a joint that lets go would do. */
public enum Consequence {
  /** A creak, a squeak, work done twice. */
  NUISANCE,
  /** The machine stops and somebody is left standing. */
  STRANDING,
  /** Somebody could be hurt. */
  INJURY
}
