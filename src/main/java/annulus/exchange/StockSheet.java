package annulus.exchange;

import annulus.quantity.InvalidValue;
import annulus.quantity.Numbers;
import annulus.stock.Cabinet;
import annulus.stock.EntryDays;
import annulus.stock.HeldBack;
import annulus.stock.Lot;
import annulus.stock.Millilitres;
import annulus.stock.SafetySheet;
import annulus.stock.StockItem;
import java.io.IOException;
import java.io.Reader;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** The cabinet as a table that a spreadsheet can edit; given back in the shape it came in. */
public final class StockSheet {
  /** All columns, in the order they are written. */
  public static final List<String> COLUMNS =
      List.of(
          "lot",
          "class",
          "label",
          "container_ml",
          "left_ml",
          "received",
          "opened",
          "expires",
          "place",
          "safety_sheet",
          "stored_low_c",
          "stored_high_c",
          "held_back",
          "held_back_on",
          "note");

  private static final Set<String> NEEDED = Set.of("lot", "class", "container_ml", "left_ml");
  private static final Set<String> NUMBERS =
      Set.of("container_ml", "left_ml", "stored_low_c", "stored_high_c");

  private final SheetTable table;
  private final Cabinet cabinet;

  private StockSheet(SheetTable table, Cabinet cabinet) {
    this.table = table;
    this.cabinet = cabinet;
  }

  /**
   * A cabinet as a sheet with all columns, with commas and decimal points; what stood in a note is
   * not known. Of several reasons that hold a lot back the first has room.
   */
  public static StockSheet of(Cabinet cabinet) {
    List<SheetTable.Row> rows = new ArrayList<>();
    for (Lot lot : cabinet.lots()) {
      rows.add(new SheetTable.Row(rows.size() + 2, cells(lot)));
    }
    return new StockSheet(new SheetTable("", SheetShape.COMMA, COLUMNS, rows), cabinet);
  }

  private static List<String> cells(Lot lot) {
    Optional<HeldBack> held = lot.heldBack().stream().findFirst();
    Optional<String> sheet = day(lot.sheet().dated());
    return List.of(
        lot.lot(),
        lot.item(),
        lot.label(),
        lot.container().toString(),
        lot.left().toString(),
        day(lot.received()).orElse(""),
        day(lot.opened()).orElse(""),
        day(lot.expires()).orElse(""),
        lot.place(),
        sheet.orElse(lot.sheet().onFile() ? "yes" : "no"),
        celsius(lot.storedLowC()),
        celsius(lot.storedHighC()),
        held.map(HeldBack::reason).orElse(""),
        day(held.map(HeldBack::day)).orElse(""),
        "");
  }

  private static String celsius(OptionalDouble stored) {
    return stored.isPresent() ? Numbers.plain(stored.getAsDouble()) : "";
  }

  /**
   * Reads a sheet.
   *
   * @param file its name for messages
   * @param in its text
   * @param items what lots can be, by id
   * @throws InputRefused with every problem found
   * @throws IOException when it can't be read
   */
  public static StockSheet read(String file, Reader in, Map<String, StockItem> items)
      throws IOException {
    SheetTable table = SheetTable.read(file, in, COLUMNS, NEEDED);
    Problems problems = new Problems();
    Map<String, Lot> lots = new LinkedHashMap<>();
    for (SheetTable.Row row : table.rows()) {
      if (!row.isBlank()) {
        Fields f = new Fields(table.object(row, NUMBERS), problems, "");
        lot(f, problems, items).ifPresent(l -> put(lots, l, f, problems));
      }
    }
    problems.throwIfAny();
    return new StockSheet(table, new Cabinet(List.copyOf(lots.values()), items));
  }

  /**
   * The sheet, when every lot in it came, was opened or held back by a day.
   *
   * @param today the last day that can have been
   * @throws InputRefused with the first such day of each row, else a slip counts when it has come
   */
  public StockSheet requireBeen(LocalDate today) {
    Problems problems = new Problems();
    Map<String, Lot> lots = byLot(cabinet);
    for (SheetTable.Row row : table.rows()) {
      Lot lot = lots.get(cell(row, "lot").strip());
      if (lot != null) {
        requireBeen(lot, row, today, problems);
      }
    }
    problems.throwIfAny();
    return this;
  }

  private void requireBeen(Lot lot, SheetTable.Row row, LocalDate today, Problems problems) {
    try {
      EntryDays.requireBeen(lot, today);
    } catch (InvalidValue e) {
      int column = table.header().indexOf(e.field()) + 1;
      Node.Place place = new Node.Place(table.file(), row.line(), column);
      problems.add(place, e.field(), e.problem(), e.allowed());
    }
  }

  private static void put(Map<String, Lot> lots, Lot lot, Fields f, Problems problems) {
    if (lots.putIfAbsent(lot.lot(), lot) != null) {
      problems.add(
          f.placeOf("lot"),
          "lot",
          Fields.quoted(lot.lot()) + " stands twice",
          "each lot once; add -1, -2 for two containers of one lot");
    }
  }

  private static Optional<Lot> lot(Fields f, Problems problems, Map<String, StockItem> items) {
    String item = f.requiredText("class");
    if (!item.isEmpty() && !items.containsKey(item)) {
      f.unknown("class", item, items.keySet());
    }
    f.allow("note");
    Optional<Lot> lot =
        Values.build(
            f,
            problems,
            () ->
                new Lot(
                    f.requiredText("lot"),
                    item,
                    f.text("label").orElse(""),
                    Millilitres.of(orZero(f.requiredNumber("container_ml", 0.1, 20_000, "mL"))),
                    Millilitres.of(orZero(f.requiredNumber("left_ml", 0, 20_000, "mL"))),
                    date(f, problems, "received"),
                    date(f, problems, "opened"),
                    date(f, problems, "expires"),
                    f.text("place").orElse(""),
                    sheet(f, problems),
                    celsius(f, "stored_low_c"),
                    celsius(f, "stored_high_c"),
                    heldBack(f, problems)));
    f.done();
    return lot;
  }

  private static double orZero(double value) {
    return Double.isNaN(value) ? 0 : value;
  }

  private static OptionalDouble celsius(Fields f, String name) {
    return f.number(name, -60, 80, "°C");
  }

  static Optional<LocalDate> date(Fields f, Problems problems, String name) {
    Optional<String> text = f.text(name);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    try {
      LocalDate date = LocalDate.parse(text.get());
      if (date.getYear() >= 1990 && date.getYear() <= 2100) {
        return Optional.of(date);
      }
    } catch (DateTimeException e) {
      // falls through to the one message
    }
    problems.add(
        f.placeOf(name),
        name,
        Fields.quoted(text.get()) + " is not a day",
        "year-month-day such as 2026-11-25, 1990 to 2100; for a month alone its first day");
    return Optional.empty();
  }

  private static SafetySheet sheet(Fields f, Problems problems) {
    Optional<String> text = f.text("safety_sheet");
    if (text.isEmpty() || text.get().equals("no")) {
      return SafetySheet.NONE;
    }
    if (text.get().equals("yes")) {
      return SafetySheet.UNDATED;
    }
    if (!text.get().matches("[0-9].*")) {
      problems.add(
          f.placeOf("safety_sheet"),
          "safety_sheet",
          Fields.quoted(text.get()) + " is not understood",
          "yes, no or the sheet's date");
      return SafetySheet.NONE;
    }
    return new SafetySheet(true, date(f, problems, "safety_sheet"));
  }

  /** A reason without its day, or a day without its reason, is half an entry. */
  private static List<HeldBack> heldBack(Fields f, Problems problems) {
    Optional<String> reason = f.text("held_back");
    Optional<String> typed = f.text("held_back_on");
    Optional<LocalDate> day = date(f, problems, "held_back_on");
    if (reason.isPresent() != typed.isPresent()) {
      problems.add(
          f.placeOf(reason.isPresent() ? "held_back" : "held_back_on"),
          reason.isPresent() ? "held_back_on" : "held_back",
          "is missing",
          "why the lot is held back, and since which day; both empty when it is not");
    }
    return reason.isPresent() && day.isPresent()
        ? List.of(HeldBack.inSheet(day.get(), reason.get()))
        : List.of();
  }

  /** The lots. */
  public Cabinet cabinet() {
    return cabinet;
  }

  /** How the sheet is written. */
  public SheetShape shape() {
    return table.shape();
  }

  /** The sheet as text, in its own shape; no cell starts a formula. */
  public String text() {
    return table.text();
  }

  /**
   * The sheet with what is left, opened and held back taken from a cabinet, and with the container
   * and arrival that go with it; every other cell stays as it is. A column that it lacks for that
   * is added at its end. Of several reasons that hold a lot back the first has room.
   */
  public StockSheet with(Cabinet now) {
    Map<String, Lot> before = byLot(cabinet);
    Map<String, Map<String, String>> moved = new LinkedHashMap<>();
    Set<String> lacking = new LinkedHashSet<>();
    for (Lot lot : now.lots()) {
      if (before.containsKey(lot.lot())) {
        Map<String, String> cells = moved(before.get(lot.lot()), lot);
        moved.put(lot.lot(), cells);
        lacking.addAll(cells.keySet());
      }
    }
    lacking.removeAll(table.header());
    SheetTable wide = table.withColumns(List.copyOf(lacking));
    List<SheetTable.Row> rows = new ArrayList<>();
    for (SheetTable.Row row : wide.rows()) {
      String lot = row.isBlank() ? "" : cell(row, "lot").strip();
      rows.add(updated(wide, row, moved.getOrDefault(lot, Map.of())));
    }
    return new StockSheet(new SheetTable(table.file(), table.shape(), wide.header(), rows), now);
  }

  private static Map<String, Lot> byLot(Cabinet cabinet) {
    Map<String, Lot> lots = new LinkedHashMap<>();
    cabinet.lots().forEach(l -> lots.put(l.lot(), l));
    return lots;
  }

  private String cell(SheetTable.Row row, String column) {
    int index = table.header().indexOf(column);
    return index < 0 ? "" : row.cells().get(index);
  }

  /** The cells of a lot that change, by their column. */
  private Map<String, String> moved(Lot old, Lot lot) {
    Map<String, String> cells = new LinkedHashMap<>();
    SheetShape shape = table.shape();
    put(cells, "left_ml", amount(shape, old.left()), amount(shape, lot.left()));
    put(cells, "container_ml", amount(shape, old.container()), amount(shape, lot.container()));
    put(cells, "received", day(old.received()), day(lot.received()));
    put(cells, "opened", day(old.opened()), day(lot.opened()));
    Optional<HeldBack> was = old.heldBack().stream().findFirst();
    Optional<HeldBack> held = lot.heldBack().stream().findFirst();
    put(cells, "held_back", was.map(HeldBack::reason), held.map(HeldBack::reason));
    put(cells, "held_back_on", day(was.map(HeldBack::day)), day(held.map(HeldBack::day)));
    return cells;
  }

  private static SheetTable.Row updated(
      SheetTable wide, SheetTable.Row row, Map<String, String> moved) {
    List<String> cells = new ArrayList<>(row.cells());
    moved.forEach((column, value) -> cells.set(wide.header().indexOf(column), value));
    return new SheetTable.Row(row.line(), cells);
  }

  private static Optional<String> amount(SheetShape shape, Millilitres amount) {
    return Optional.of(shape.number(amount.toString()));
  }

  private static Optional<String> day(Optional<LocalDate> day) {
    return day.map(LocalDate::toString);
  }

  private static void put(
      Map<String, String> cells, String column, Optional<String> old, Optional<String> now) {
    if (!old.equals(now)) {
      cells.put(column, now.orElse(""));
    }
  }
}
