package annulus.report;

import annulus.quantity.Numbers;
import annulus.stock.LotCheck;
import annulus.stock.LotCheck.Objection;
import annulus.stock.UseBy;
import java.util.stream.Collectors;

/** Words about lots; the one place that makes them. */
final class StockWords {
  private StockWords() {}

  /** The rule a use-by follows from, with its source. */
  static String rule(UseBy useBy) {
    String months = Numbers.plain(useBy.months());
    String source = " (" + useBy.provenance().source() + ")";
    return switch (useBy.rule()) {
      case PRINTED_EXPIRY -> "printed expiry";
      case AFTER_OPENING -> months + " months after opening" + source;
      case SHELF_LIFE -> months + " months after it came, no date printed" + source;
    };
  }

  /** The use-by with its rule. */
  static String useBy(LotCheck check) {
    return check.useBy().map(u -> u.date() + ", " + rule(u)).orElse("unknown");
  }

  /** Why a lot must not be used. */
  static String against(LotCheck check) {
    return check.against().stream().map(o -> objection(o, check)).collect(Collectors.joining("; "));
  }

  private static String objection(Objection objection, LotCheck check) {
    String storage =
        Numbers.plain(check.item().storageC().low())
            + " to "
            + Numbers.plain(check.item().storageC().high())
            + " °C ("
            + check.item().provenance().source()
            + ")";
    return switch (objection) {
      case PAST_PRINTED_EXPIRY -> "past its printed expiry " + date(check);
      case OPENED_TOO_LONG ->
          "opened too long: opened "
              + check.lot().opened().orElseThrow()
              + ", last day was "
              + date(check)
              + ", "
              + check.useBy().map(StockWords::rule).orElse("");
      case PAST_SHELF_LIFE ->
          "too old: last day was "
              + date(check)
              + ", "
              + check.useBy().map(StockWords::rule).orElse("");
      case NO_DATE_KNOWN -> "neither expiry nor day of arrival is known";
      case STORED_TOO_HOT ->
          "stored too hot: "
              + Numbers.plain(check.lot().storedHighC().orElse(0))
              + " °C on its log, allowed "
              + storage;
      case STORED_TOO_COLD ->
          "stored too cold: "
              + Numbers.plain(check.lot().storedLowC().orElse(0))
              + " °C on its log, allowed "
              + storage;
      case DATE_TO_COME -> "received or opened on a day that is still to come";
    };
  }

  private static String date(LotCheck check) {
    return check.useBy().map(u -> u.date().toString()).orElse("unknown");
  }
}
