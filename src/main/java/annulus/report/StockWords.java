package annulus.report;

import annulus.quantity.Numbers;
import annulus.stock.HeldBack;
import annulus.stock.LotCheck;
import annulus.stock.LotCheck.Objection;
import annulus.stock.UseBy;
import java.util.List;
import java.util.stream.Collectors;

/** Words about lots; the one place that makes them. */
final class StockWords {
  /** Room for the words that there are more reasons. */
  private static final int MORE = 34;

  private StockWords() {}

  /** The rule a use-by follows from, with its source. */
  static String rule(UseBy useBy) {
    return rule(useBy, true);
  }

  /** The rule a use-by follows from, where there is no room for its source. */
  static String ruleAlone(UseBy useBy) {
    return rule(useBy, false);
  }

  private static String rule(UseBy useBy, boolean sourced) {
    String months = Numbers.plain(useBy.months());
    String source = sourced ? " (" + useBy.provenance().source() + ")" : "";
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
    return check.against().stream()
        .map(o -> objection(o, check, true))
        .collect(Collectors.joining("; "));
  }

  /**
   * Why a lot must not be used, where there is little room: without sources, a first reason in
   * somebody's own words ends with a mark where it runs on, and reasons behind it that do not fit
   * are counted.
   *
   * @param most characters
   */
  static String againstWithin(LotCheck check, int most) {
    List<Objection> all = check.against();
    StringBuilder shown = new StringBuilder(first(check, all.size() == 1 ? most : most - MORE));
    for (int i = 1; i < all.size(); i++) {
      String next = "; " + objection(all.get(i), check, false);
      String rest = "; " + (all.size() - i) + " more: see the stock check";
      int behind = i == all.size() - 1 ? 0 : rest.length();
      if (shown.length() + next.length() + behind > most) {
        return shown.append(rest).toString();
      }
      shown.append(next);
    }
    return shown.toString();
  }

  private static String first(LotCheck check, int most) {
    return TextLines.shortened(objection(check.against().get(0), check, false), most);
  }

  private static String objection(Objection objection, LotCheck check, boolean sourced) {
    String storage =
        Numbers.plain(check.item().storageC().low())
            + " to "
            + Numbers.plain(check.item().storageC().high())
            + " °C"
            + (sourced ? " (" + check.item().provenance().source() + ")" : "");
    return switch (objection) {
      case HELD_BACK ->
          check.lot().heldBack().stream().map(HeldBack::words).collect(Collectors.joining("; "));
      case PAST_PRINTED_EXPIRY -> "past its printed expiry " + date(check);
      case OPENED_TOO_LONG ->
          "opened too long: opened "
              + check.lot().opened().orElseThrow()
              + ", last day was "
              + date(check)
              + ", "
              + check.useBy().map(u -> rule(u, sourced)).orElse("");
      case PAST_SHELF_LIFE ->
          "too old: last day was "
              + date(check)
              + ", "
              + check.useBy().map(u -> rule(u, sourced)).orElse("");
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
