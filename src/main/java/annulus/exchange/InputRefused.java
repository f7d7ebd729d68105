package annulus.exchange;

import java.util.List;
import java.util.stream.Collectors;

/** Input that can't be used; carries every problem found, in file order. */
public final class InputRefused extends RuntimeException {
  private static final long serialVersionUID = 1L;

  @SuppressWarnings("serial") // an immutable list of records of strings; never serialised
  private final List<PlacedProblem> problems;

  /**
   * @param problems at least one
   */
  public InputRefused(List<PlacedProblem> problems) {
    super(problems.stream().map(PlacedProblem::toString).collect(Collectors.joining("\n")));
    this.problems = List.copyOf(problems);
  }

  public List<PlacedProblem> problems() {
    return problems;
  }
}
