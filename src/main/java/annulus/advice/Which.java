package annulus.advice;

import java.util.Optional;
import java.util.function.Predicate;

/** The member or members that something is said of. */
public enum Which {
  BORE,
  PART,
  BORE_AND_PART;

  /** The members of an order that pass; empty for neither. */
  static Optional<Which> of(JointOrder order, Predicate<Member> test) {
    return of(test.test(order.bore()), test.test(order.part()));
  }

  /** The named members; empty for neither. */
  static Optional<Which> of(boolean bore, boolean part) {
    if (bore && part) {
      return Optional.of(BORE_AND_PART);
    }
    return bore ? Optional.of(BORE) : part ? Optional.of(PART) : Optional.empty();
  }

  /** As a mechanic calls them: {@code the bore}. */
  String words() {
    return this == BORE ? "the bore" : this == PART ? "the part" : "bore and part";
  }
}
