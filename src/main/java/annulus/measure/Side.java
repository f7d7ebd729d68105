package annulus.measure;

import annulus.catalog.Instrument;

/** Which member of the joint was measured. */
public enum Side {
  /** The hole, measured from inside. */
  BORE(Instrument.Use.INSIDE),
  /** What goes into it, measured from outside. */
  PART(Instrument.Use.OUTSIDE);

  private final Instrument.Use use;

  Side(Instrument.Use use) {
    this.use = use;
  }

  /** How an instrument is used on this side. */
  public Instrument.Use use() {
    return use;
  }
}
