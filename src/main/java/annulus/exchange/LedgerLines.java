package annulus.exchange;

import annulus.quantity.InvalidValue;
import annulus.stock.Millilitres;
import annulus.stock.Movement;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.CRC32C;

/**
 * One line of the ledger file: a mark of the form, a checksum of the rest, and the fields of the
 * movement, apart by tabs. Tabs, line ends and backslashes inside a field are written with a
 * backslash.
 */
public final class LedgerLines {
  private static final String MARK = "A1";
  private static final int FIELDS = 11;

  /** All that a line has, its last field left to be longer. */
  private static final Pattern FORM =
      Pattern.compile(
          MARK + "\\t[0-9a-f]{8}(?:\\t[^\\t\\r]*+){" + (FIELDS - 1) + "}\\t[^\\t\\r]*+");

  private static final String ALLOWED = "a line as the program wrote it";

  private LedgerLines() {}

  /** The line of a movement, without line end. */
  public static String line(Movement m) {
    String rest =
        String.join(
            "\t",
            List.of(
                escaped(m.id()),
                m.at().toString(),
                m.day().toString(),
                Fields.word(m.kind()),
                escaped(m.who()),
                escaped(m.job()),
                escaped(m.lot()),
                escaped(m.item()),
                m.amount().toString(),
                escaped(m.reason()),
                escaped(m.witness())));
    return marked(rest);
  }

  /** The line with mark and checksum before the fields. */
  static String marked(String rest) {
    return MARK + "\t" + checksum(rest) + "\t" + rest;
  }

  /** CRC-32C of the text as UTF-8, eight hexadecimal digits. */
  private static String checksum(String rest) {
    CRC32C crc = new CRC32C();
    crc.update(rest.getBytes(StandardCharsets.UTF_8));
    return String.format(Locale.ROOT, "%08x", crc.getValue());
  }

  /** Whether a line is whole: its mark and checksum are right. */
  public static boolean isWhole(String line) {
    String[] parts = line.split("\t", 3);
    return parts.length == 3 && parts[0].equals(MARK) && parts[1].equals(checksum(parts[2]));
  }

  /**
   * Whether a line can have been cut off while it was written. One that ends in the mark of its
   * last field has all its fields, as that field is mostly empty: with a wrong checksum it was
   * changed.
   *
   * @param line what is there of it; only its ASCII characters are looked at
   */
  public static boolean canBeCutOff(String line) {
    Matcher form = FORM.matcher(line);
    boolean begins = form.matches() || form.hitEnd();
    return begins && !(form.matches() && line.endsWith("\t"));
  }

  /**
   * The movement of a line.
   *
   * @param file name of the ledger
   * @param number the line's number, from 1
   * @param line without line end
   * @throws InputRefused when the line is damaged
   */
  public static Movement movement(String file, int number, String line) {
    if (!isWhole(line)) {
      throw refused(file, number, "", damage(line), ALLOWED);
    }
    String[] f = line.split("\t", 3)[2].split("\t", -1);
    if (f.length != FIELDS) {
      throw refused(file, number, "", f.length + " fields", FIELDS + " fields");
    }
    try {
      return new Movement(
          plain(f[0]),
          Instant.parse(f[1]),
          LocalDate.parse(f[2]),
          kind(f[3]).orElseThrow(() -> noKind(file, number, f[3])),
          plain(f[4]),
          plain(f[5]),
          plain(f[6]),
          plain(f[7]),
          Millilitres.of(Double.parseDouble(f[8])),
          plain(f[9]),
          plain(f[10]));
    } catch (InvalidValue e) {
      throw refused(file, number, e.field(), e.problem(), e.allowed());
    } catch (DateTimeException | NumberFormatException e) {
      throw refused(file, number, "", "has a field that can't be read", ALLOWED);
    }
  }

  private static String damage(String line) {
    if (line.endsWith("\r") && isWhole(line.substring(0, line.length() - 1))) {
      return "is damaged: another program has changed the line ends";
    }
    return line.startsWith(MARK + "\t")
        ? "is damaged: its checksum does not fit"
        : "is damaged, or no line of a ledger";
  }

  private static Optional<Movement.Kind> kind(String word) {
    for (Movement.Kind kind : Movement.Kind.values()) {
      if (Fields.word(kind).equals(word)) {
        return Optional.of(kind);
      }
    }
    return Optional.empty();
  }

  private static InputRefused noKind(String file, int line, String word) {
    return refused(file, line, "kind", Fields.quoted(word) + " is no kind of movement", ALLOWED);
  }

  private static InputRefused refused(
      String file, int line, String field, String problem, String allowed) {
    return new InputRefused(List.of(new PlacedProblem(file, line, 0, field, problem, allowed)));
  }

  private static String escaped(String text) {
    return text.replace("\\", "\\\\")
        .replace("\t", "\\t")
        .replace("\n", "\\n")
        .replace("\r", "\\r");
  }

  private static String plain(String field) {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < field.length(); i++) {
      char c = field.charAt(i);
      if (c == '\\' && i + 1 < field.length()) {
        i++;
        text.append(
            switch (field.charAt(i)) {
              case 't' -> '\t';
              case 'n' -> '\n';
              case 'r' -> '\r';
              default -> field.charAt(i);
            });
      } else {
        text.append(c);
      }
    }
    return text.toString();
  }
}
