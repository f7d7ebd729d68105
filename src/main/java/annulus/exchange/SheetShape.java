package annulus.exchange;

import java.util.List;

/**
 * How a spreadsheet wrote a table, so that it can be given back the same way.
 *
 * @param delimiter comma, semicolon or tab
 * @param decimalComma whether numbers are written 12,5
 * @param bom whether a byte order mark leads
 * @param declared whether the first line declares the decimal sign
 * @param lineEnd LF or CRLF
 */
public record SheetShape(
    char delimiter, boolean decimalComma, boolean bom, boolean declared, String lineEnd) {
  /** Comma, decimal point. */
  public static final SheetShape COMMA = new SheetShape(',', false, false, false, "\n");

  /** Semicolon, decimal comma, byte order mark. */
  public static final SheetShape SEMICOLON = new SheetShape(';', true, true, false, "\r\n");

  /** Tab, decimal point. */
  public static final SheetShape TAB = new SheetShape('\t', false, false, false, "\n");

  private static final String DECLARATION = "# decimal: ";

  /** Looks at the head of a text; semicolons mean a decimal comma unless a first line says else. */
  static SheetShape of(String file, String text) {
    boolean bom = text.startsWith("\uFEFF");
    String body = bom ? text.substring(1) : text;
    String first = line(body, 0);
    String lineEnd = body.startsWith("\r\n", first.length()) ? "\r\n" : "\n";
    if (!first.startsWith("#")) {
      char delimiter = delimiter(first);
      return new SheetShape(delimiter, delimiter == ';', bom, false, lineEnd);
    }
    String rule = first.strip().replaceFirst("[,;\\t]+$", "");
    if (!rule.equals(DECLARATION + "comma") && !rule.equals(DECLARATION + "point")) {
      throw new InputRefused(
          List.of(
              new PlacedProblem(
                  file,
                  1,
                  1,
                  "",
                  Fields.quoted(first) + " is not understood",
                  DECLARATION + "comma or " + DECLARATION + "point")));
    }
    String header = line(body, Math.min(body.length(), first.length() + lineEnd.length()));
    return new SheetShape(delimiter(header), rule.endsWith("comma"), bom, true, lineEnd);
  }

  private static String line(String text, int from) {
    int end = from;
    while (end < text.length() && text.charAt(end) != '\n' && text.charAt(end) != '\r') {
      end++;
    }
    return text.substring(from, end);
  }

  private static char delimiter(String header) {
    return header.indexOf(';') >= 0 ? ';' : header.indexOf('\t') >= 0 ? '\t' : ',';
  }

  /** What stands before the header. */
  String head() {
    String rule = declared ? DECLARATION + (decimalComma ? "comma" : "point") + lineEnd : "";
    return (bom ? "\uFEFF" : "") + rule;
  }

  /** A plain number in this shape. */
  String number(String plain) {
    return decimalComma ? plain.replace('.', ',') : plain;
  }
}
