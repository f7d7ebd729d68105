package annulus.store;

/** The database can't do what is asked; nothing was written. */
public final class StoreFailed extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /**
   * @param message what is wrong, and what helps
   * @param cause null where there is none
   */
  public StoreFailed(String message, Throwable cause) {
    super(message, cause);
  }
}
