package annulus.stock;

import annulus.catalog.Confidence;
import annulus.catalog.Provenance;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The last day a lot may be used, with the rule that says so.
 *
 * @param date last day
 * @param rule which rule is the earliest
 * @param months the life it reckons with; 0 for a printed date
 * @param provenance where that rule's number comes from
 */
public record UseBy(LocalDate date, Rule rule, double months, Provenance provenance) {
  private static final Provenance PRINTED = new Provenance("printed on the lot", Confidence.HIGH);

  /** What a use-by follows from. */
  public enum Rule {
    /** The date on the label. */
    PRINTED_EXPIRY,
    /** Life once opened. */
    AFTER_OPENING,
    /** Unopened life since it came, where no date is printed. */
    SHELF_LIFE
  }

  /**
   * The earlier of printed expiry and opening plus open life; without a printed date, of arrival
   * plus shelf life.
   *
   * @return empty when nothing is known
   */
  public static Optional<UseBy> of(Lot lot, StockItem item) {
    Optional<UseBy> printed = lot.expires().map(d -> new UseBy(d, Rule.PRINTED_EXPIRY, 0, PRINTED));
    Optional<UseBy> shelf =
        printed.isPresent()
            ? Optional.empty()
            : lot.received().map(d -> after(d, Rule.SHELF_LIFE, item.shelfMonths(), item));
    Optional<UseBy> open =
        lot.opened().map(d -> after(d, Rule.AFTER_OPENING, item.openMonths(), item));
    List<UseBy> ends = Stream.of(printed, shelf, open).flatMap(Optional::stream).toList();
    boolean bounded = printed.isPresent() || shelf.isPresent();
    return bounded ? ends.stream().min(Comparator.comparing(UseBy::date)) : Optional.empty();
  }

  private static UseBy after(LocalDate from, Rule rule, double months, StockItem item) {
    long whole = (long) months;
    long days = (long) ((months - whole) * 28);
    return new UseBy(from.plusMonths(whole).plusDays(days), rule, months, item.provenance());
  }
}
