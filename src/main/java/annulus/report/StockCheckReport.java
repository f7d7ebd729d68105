package annulus.report;

import annulus.stock.HeldBack;
import annulus.stock.Lot;
import annulus.stock.LotCheck;
import annulus.stock.LotCheck.Standing;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;

/**
 * The state of the cabinet on a day, for people and for machines.
 *
 * @param on the day
 * @param withinDays a use-by this near is called out
 * @param checks every lot
 * @param notes what else is to be said, such as sheets that disagree with the ledger
 */
public record StockCheckReport(
    LocalDate on, long withinDays, List<LotCheck> checks, List<String> notes) {
  private static final int LOT = 14;
  private static final int CLASS = 20;
  private static final int LEFT = 12;

  public StockCheckReport {
    checks = List.copyOf(checks);
    notes = List.copyOf(notes);
  }

  /** Whether something must not be used, or nothing may. */
  public boolean isNo() {
    return checks.stream().anyMatch(c -> c.standing() == Standing.MUST_NOT)
        || checks.stream().noneMatch(LotCheck::usable);
  }

  /** The text for a terminal. */
  public String text() {
    TextLines out = new TextLines();
    long usable = checks.stream().filter(LotCheck::usable).count();
    out.line("Cabinet on " + on + ": " + usable + " of " + checks.size() + " lots may be used.");
    section(out, "MUST NOT BE USED", Standing.MUST_NOT);
    section(out, "Use soon (within " + withinDays + " days)", Standing.SOON);
    section(out, "May be used", Standing.USABLE);
    section(out, "Empty", Standing.EMPTY);
    noSheet(out);
    if (!notes.isEmpty()) {
      out.heading("Notes");
      notes.forEach(n -> out.hanging("  ", n));
    }
    return out.toString();
  }

  private void section(TextLines out, String heading, Standing standing) {
    List<LotCheck> found = checks.stream().filter(c -> c.standing() == standing).toList();
    if (found.isEmpty()) {
      return;
    }
    out.heading(heading);
    for (LotCheck check : found) {
      String head =
          "  "
              + TextLines.cell(check.lot().lot(), LOT)
              + TextLines.cell(check.item().id(), CLASS)
              + TextLines.cell(check.lot().left() + " mL", LEFT);
      boolean never = standing == Standing.MUST_NOT || check.lot().isHeldBack();
      String words = never ? StockWords.against(check) : "use by " + StockWords.useBy(check);
      out.hanging(head, words);
      String label = check.lot().label();
      String place = check.lot().place();
      String where = place.isEmpty() ? label : label.isEmpty() ? place : label + ", " + place;
      if (!where.isEmpty()) {
        out.hanging("    ", where);
      }
    }
  }

  private void noSheet(TextLines out) {
    List<String> lots =
        checks.stream()
            .filter(c -> !c.lot().sheet().onFile() && c.standing() != Standing.EMPTY)
            .map(c -> c.lot().lot())
            .toList();
    if (!lots.isEmpty()) {
      out.heading("No safety data sheet on file").hanging("  ", String.join(", ", lots));
    }
  }

  /** Why a lot must not be used, in words. */
  public static String words(LotCheck check) {
    return "lot " + check.lot().lot() + ": " + StockWords.against(check);
  }

  /** What to do about a use that took place. */
  public static final String USED_BEFORE =
      "What was used of it up to that day is recorded with a reason that says so.";

  /** That a lot is held back, with who, when and why. */
  public static String heldBack(String lot, HeldBack held) {
    return "lot " + lot + " has been " + held.words();
  }

  /** Why a sealed lot should stay sealed. */
  public static String openInstead(String sealed, Lot open) {
    return "lot "
        + sealed
        + " is sealed, and lot "
        + open.lot()
        + " of the same class is open and in date with "
        + open.left()
        + " mL";
  }

  /** The same as JSON; {@code data/schema/stock-check.schema.json} describes it. */
  public String json() {
    return JsonOut.document(
        json ->
            json.whole("format", 1)
                .text("on", on.toString())
                .whole("withinDays", withinDays)
                .list("lots", checks, c -> lot(json, c))
                .texts("notes", notes));
  }

  private static void lot(JsonOut json, LotCheck check) {
    json.text("lot", check.lot().lot())
        .text("class", check.item().id())
        .number("leftMl", check.lot().left().value())
        .text("standing", word(check.standing()))
        .text("useBy", check.useBy().map(u -> u.date().toString()))
        .text("rule", check.useBy().map(u -> word(u.rule())))
        .text("ruleSource", check.useBy().map(u -> u.provenance().source()))
        .texts("against", check.against().stream().map(StockCheckReport::word).toList())
        .text("because", StockWords.against(check))
        .list("heldBack", check.lot().heldBack(), h -> heldBack(json, h))
        .flag("safetySheet", check.lot().sheet().onFile());
  }

  private static void heldBack(JsonOut json, HeldBack held) {
    json.text("id", held.id())
        .text("day", held.day().toString())
        .text("who", held.who())
        .text("reason", held.reason());
  }

  private static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
