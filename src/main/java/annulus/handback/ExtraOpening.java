package annulus.handback;

import annulus.quantity.InvalidValue;
import java.time.LocalDate;
import java.util.List;

/**
 * Hours on one date in addition to the weekly ones.
 *
 * @param date the local date
 * @param spans the hours, at least one, in order of start
 */
public record ExtraOpening(LocalDate date, List<OpenSpan> spans) {
  /**
   * @throws InvalidValue when a part lacks or the spans overlap
   */
  public ExtraOpening {
    if (date == null) {
      throw new InvalidValue("date", "is missing", "a date");
    }
    spans = OpeningHours.inOrder("spans", spans);
    if (spans.isEmpty()) {
      throw new InvalidValue("spans", "is empty for " + date, "at least one span");
    }
  }
}
