package annulus.measure;

import annulus.quantity.Check;
import java.util.function.Supplier;

/**
 * What a line of a budget is called. The texts are made when they are asked for: a job list has
 * thousands of budgets that nobody reads.
 *
 * @param member {@code bore} or {@code part} in the budget of a gap, empty in that of a diameter
 * @param ownId stable name within the member
 * @param ownName what a mechanic calls it
 * @param reason where the figure comes from
 */
record Line(String member, String ownId, String ownName, Supplier<String> reason) {
  /** A line that comes from outside of this package: no text may be empty. */
  static Line checked(String id, String name, Supplier<String> reason) {
    return of(Check.text("id", id), Check.text("name", name), reason);
  }

  static Line of(String id, String name, Supplier<String> reason) {
    return new Line("", id, name, reason);
  }

  /** The same line in the budget of a gap. */
  Line ofMember(String of) {
    return new Line(of, id(), name(), reason);
  }

  String id() {
    return member.isEmpty() ? ownId : member + "." + ownId;
  }

  String name() {
    return member.isEmpty() ? ownName : member + ": " + ownName;
  }
}
