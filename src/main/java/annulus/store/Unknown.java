package annulus.store;

/** There is no such job, draft or lot. */
public final class Unknown extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /**
   * @param what what was asked for, in words
   */
  public Unknown(String what) {
    super(what);
  }
}
