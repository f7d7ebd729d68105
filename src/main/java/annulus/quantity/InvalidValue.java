package annulus.quantity;

/**
 * A value outside what a quantity may be. Carries the parts of the message so that an edge can add
 * the place (file, line, column) without taking the text apart.
 */
public final class InvalidValue extends IllegalArgumentException {
  private static final long serialVersionUID = 1L;

  private final String field;
  private final String problem;
  private final String allowed;

  /**
   * @param field the field's name as the user wrote it, such as {@code boreDiameterMm}
   * @param problem what is wrong, with the value and its unit
   * @param allowed what would be accepted
   */
  public InvalidValue(String field, String problem, String allowed) {
    super(field + ": " + problem + "; allowed: " + allowed);
    this.field = field;
    this.problem = problem;
    this.allowed = allowed;
  }

  public String field() {
    return field;
  }

  public String problem() {
    return problem;
  }

  public String allowed() {
    return allowed;
  }
}
