package annulus.store;

import annulus.stock.Lot;
import annulus.stock.Millilitres;
import annulus.stock.Movement;
import annulus.stock.SafetySheet;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Lots and movements as rows of the database, each with its seal as the last column. */
final class CabinetRows {
  static final List<String> LOT =
      List.of(
          "lot",
          "item",
          "label",
          "container_ul",
          "left_ul",
          "received",
          "opened",
          "expires",
          "place",
          "sheet_on_file",
          "sheet_dated",
          "stored_low_c",
          "stored_high_c");
  static final List<String> MOVEMENT =
      List.of(
          "id", "at", "day", "kind", "who", "job", "lot", "item", "amount_ul", "reason", "witness");

  private CabinetRows() {}

  /** The columns of a table, the seal last, apart by commas. */
  static String sealed(List<String> columns) {
    return String.join(", ", columns) + ", seal";
  }

  /** As many question marks as columns and their seal. */
  static String marks(List<String> columns) {
    return "?" + ", ?".repeat(columns.size());
  }

  /** What is written for a lot, its seal last. */
  static Object[] values(Lot lot) {
    return withSeal(
        lot.lot(),
        lot.item(),
        lot.label(),
        lot.container().microlitres(),
        lot.left().microlitres(),
        day(lot.received()),
        day(lot.opened()),
        day(lot.expires()),
        lot.place(),
        lot.sheet().onFile() ? 1 : 0,
        day(lot.sheet().dated()),
        number(lot.storedLowC()),
        number(lot.storedHighC()));
  }

  /** What is written for a movement, its seal last. */
  static Object[] values(Movement m) {
    return withSeal(
        m.id(),
        m.at().toString(),
        m.day().toString(),
        m.kind().name(),
        m.who(),
        m.job(),
        m.lot(),
        m.item(),
        m.amount().microlitres(),
        m.reason(),
        m.witness());
  }

  private static Object[] withSeal(Object... values) {
    Object[] all = Arrays.copyOf(values, values.length + 1);
    all[values.length] = Seal.ofRow(values);
    return all;
  }

  private static String day(Optional<LocalDate> day) {
    return day.map(LocalDate::toString).orElse(null);
  }

  private static Double number(OptionalDouble value) {
    return value.isPresent() ? (Double) value.getAsDouble() : null;
  }

  /**
   * The lot of a row.
   *
   * @throws StoreFailed when the seal does not fit
   */
  static Lot lot(ResultSet row) throws SQLException {
    Object[] v = Seal.offRow(row, LOT.size(), "lot");
    return new Lot(
        text(v[0]),
        text(v[1]),
        text(v[2]),
        millilitres(v[3]),
        millilitres(v[4]),
        day(v[5]),
        day(v[6]),
        day(v[7]),
        text(v[8]),
        new SafetySheet(((Number) v[9]).intValue() == 1, day(v[10])),
        number(v[11]),
        number(v[12]),
        List.of());
  }

  /**
   * The movement of a row.
   *
   * @throws StoreFailed when the seal does not fit
   */
  static Movement movement(ResultSet row) throws SQLException {
    Object[] v = Seal.offRow(row, MOVEMENT.size(), "movement");
    return new Movement(
        text(v[0]),
        Instant.parse(text(v[1])),
        LocalDate.parse(text(v[2])),
        Movement.Kind.valueOf(text(v[3])),
        text(v[4]),
        text(v[5]),
        text(v[6]),
        text(v[7]),
        millilitres(v[8]),
        text(v[9]),
        text(v[10]));
  }

  private static String text(Object value) {
    return value.toString();
  }

  private static Millilitres millilitres(Object value) {
    return new Millilitres(((Number) value).longValue());
  }

  private static Optional<LocalDate> day(Object value) {
    return Optional.ofNullable(value).map(v -> LocalDate.parse(v.toString()));
  }

  private static OptionalDouble number(Object value) {
    return value == null
        ? OptionalDouble.empty()
        : OptionalDouble.of(((Number) value).doubleValue());
  }
}
