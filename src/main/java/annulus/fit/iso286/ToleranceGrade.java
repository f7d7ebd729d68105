package annulus.fit.iso286;

import annulus.quantity.InvalidValue;
import java.util.List;
import java.util.Optional;

/** Standard tolerance grades of ISO 286-1, finest first. */
public enum ToleranceGrade {
  IT01,
  IT0,
  IT1,
  IT2,
  IT3,
  IT4,
  IT5,
  IT6,
  IT7,
  IT8,
  IT9,
  IT10,
  IT11,
  IT12,
  IT13,
  IT14,
  IT15,
  IT16,
  IT17,
  IT18;

  private static final List<ToleranceGrade> FINEST_FIRST = List.of(values());

  /** The grade as it stands in a designation: {@code 7} for {@code IT7}, {@code 01} for IT01. */
  public String number() {
    return name().substring(2);
  }

  /**
   * The grade written as {@code IT7}.
   *
   * @throws InvalidValue for anything else
   */
  public static ToleranceGrade named(String field, String text) {
    return FINEST_FIRST.stream()
        .filter(g -> g.name().equals(text))
        .findFirst()
        .orElseThrow(() -> unknown(field, text));
  }

  /**
   * The grade written as {@code 7}.
   *
   * @throws InvalidValue for anything else
   */
  public static ToleranceGrade numbered(String field, String text) {
    return FINEST_FIRST.stream()
        .filter(g -> g.number().equals(text))
        .findFirst()
        .orElseThrow(() -> unknown(field, text));
  }

  /** The next finer grade. */
  Optional<ToleranceGrade> finer() {
    int place = FINEST_FIRST.indexOf(this);
    return place == 0 ? Optional.empty() : Optional.of(FINEST_FIRST.get(place - 1));
  }

  boolean between(ToleranceGrade from, ToleranceGrade to) {
    return compareTo(from) >= 0 && compareTo(to) <= 0;
  }

  private static InvalidValue unknown(String field, String text) {
    return new InvalidValue(
        field, "\"" + text + "\" is no tolerance grade", "01, 0, 1 to 18 (IT01 to IT18)");
  }
}
