package annulus.store;

/** The database can't do what is asked; nothing was written. */
public final class StoreFailed extends RuntimeException {
  private static final long serialVersionUID = 1L;

  StoreFailed(String message, Throwable cause) {
    super(message, cause);
  }
}
