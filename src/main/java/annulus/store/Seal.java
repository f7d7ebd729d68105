package annulus.store;

import java.nio.charset.StandardCharsets;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.HexFormat;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.CRC32C;

/**
 * A checksum that goes along with what decides a hand-back. The database notices a damaged page but
 * not a single letter that turned into another within a row; the seal does.
 */
final class Seal {
  private static final Pattern IN_JSON = Pattern.compile(",\"seal\":\"([0-9a-f]{8})\"}$");
  private static final Pattern AT_END = Pattern.compile("\nseal ([0-9a-f]{8})$");

  private Seal() {}

  /** A JSON object with its seal as the last member. */
  static String onJson(String json) {
    return json.substring(0, json.length() - 1) + ",\"seal\":\"" + of(json) + "\"}";
  }

  /**
   * The JSON object without its seal; one written before there were seals stays as it is.
   *
   * @throws StoreFailed when the seal does not fit
   */
  static String offJson(String text) {
    Matcher seal = IN_JSON.matcher(text);
    if (!seal.find()) {
      return text;
    }
    String json = text.substring(0, seal.start()) + "}";
    require(seal.group(1), of(json), "a job");
    return json;
  }

  /** The text of a log with the seal of all that it is read by in a last line. */
  static String onLog(TemperatureLog log) {
    return log.text() + "\nseal " + of(all(log));
  }

  /**
   * The log without the seal in its text.
   *
   * @throws StoreFailed when the seal does not fit
   */
  static TemperatureLog offLog(TemperatureLog stored) {
    Matcher seal = AT_END.matcher(stored.text());
    if (!seal.find()) {
      return stored;
    }
    TemperatureLog log =
        new TemperatureLog(
            stored.id(),
            stored.name(),
            stored.text().substring(0, seal.start()),
            stored.dateOrder(),
            stored.unit(),
            stored.column(),
            stored.readAt());
    require(seal.group(1), of(all(log)), "a temperature log");
    return log;
  }

  private static String all(TemperatureLog log) {
    return String.join(
        "\n", log.name(), log.text(), log.dateOrder(), log.unit(), log.column(), "" + log.readAt());
  }

  /** The values of a row, as many as are sealed. */
  static Object[] row(ResultSet row, int columns) throws SQLException {
    Object[] values = new Object[columns];
    for (int i = 0; i < columns; i++) {
      values[i] = row.getObject(i + 1);
    }
    return values;
  }

  /**
   * The values of a row whose seal stands in the column after them.
   *
   * @param table what a row is; the first value tells which
   * @throws StoreFailed when the seal does not fit
   */
  static Object[] offRow(ResultSet row, int columns, String table) throws SQLException {
    Object[] values = row(row, columns);
    String sealed = row.getString(columns + 1);
    String found = ofRow(values);
    if (!found.equals(sealed)) {
      require(String.valueOf(sealed), found, table + " " + values[0]);
    }
    return values;
  }

  /** The seal of a row: each value with its length, so that none can pass for a part of another. */
  static String ofRow(Object[] values) {
    StringBuilder all = new StringBuilder(256);
    for (Object value : values) {
      String text = value == null ? "" : value.toString();
      all.append(value == null ? "-" : text.length()).append(':').append(text).append('\n');
    }
    return of(all.toString());
  }

  private static String of(String text) {
    CRC32C crc = new CRC32C();
    crc.update(text.getBytes(StandardCharsets.UTF_8));
    return HexFormat.of().toHexDigits((int) crc.getValue());
  }

  /**
   * @throws StoreFailed when what was sealed is not what is found
   */
  static void require(String sealed, String found, String what) {
    if (!sealed.equals(found)) {
      throw new StoreFailed(
          what
              + " in the database is damaged (its seal does not fit); put the last backup in its"
              + " place: restore BACKUP --database URL",
          null);
    }
  }
}
