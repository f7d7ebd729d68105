package annulus.report;

import annulus.quantity.Numbers;

/**
 * One SVG picture, measured in millimetres so that a stated scale holds on paper. Black and greys
 * only; no script, no reference to anything outside.
 */
final class Svg {
  /**
   * The font of every picture; the last but one is for where the others are missing, and narrow.
   */
  static final String FONT =
      "font-family=\"Liberation Sans, Arial, Helvetica, DejaVu Sans Condensed, sans-serif\"";

  private static final int DECIMALS = 2;

  private final StringBuilder body = new StringBuilder();
  private final double width;
  private final double height;
  private final String title;
  private final String description;

  /**
   * @param width mm
   * @param height mm
   * @param title short name
   * @param description what it shows, with the figures, for whoever cannot see it
   */
  Svg(double width, double height, String title, String description) {
    this.width = width;
    this.height = height;
    this.title = title;
    this.description = description;
  }

  /** Two fixed decimals, a point, no exponent. */
  static String number(double value) {
    return Numbers.fixed(value, DECIMALS);
  }

  /** A straight line; {@code style} holds stroke attributes. */
  Svg line(double x1, double y1, double x2, double y2, String style) {
    body.append("<line ");
    at("x1", x1).at("y1", y1).at("x2", x2).at("y2", y2);
    return end(style);
  }

  Svg rectangle(double x, double y, double w, double h, String style) {
    body.append("<rect ");
    at("x", x).at("y", y).at("width", Math.max(0, w)).at("height", Math.max(0, h));
    return end(style);
  }

  /** A path made with {@link Path}. */
  Svg path(Path path, String style) {
    body.append("<path d=\"").append(path.text).append("\" ");
    return end(style);
  }

  /**
   * A label.
   *
   * @param anchor start, middle or end
   * @param size font size, mm
   */
  Svg text(double x, double y, String anchor, double size, String style, String text) {
    body.append("<text ");
    at("x", x).at("y", y);
    body.append("text-anchor=\"").append(anchor).append("\" ");
    at("font-size", size);
    body.append(style).append('>').append(Html.text(TextLines.printable(text))).append("</text>\n");
    return this;
  }

  private Svg end(String style) {
    body.append(style).append("/>\n");
    return this;
  }

  private Svg at(String name, double value) {
    body.append(name).append("=\"");
    Numbers.appendFixed(body, value, DECIMALS);
    body.append("\" ");
    return this;
  }

  /** The whole element. */
  String element() {
    return "<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" width=\""
        + number(width)
        + "mm\" height=\""
        + number(height)
        + "mm\" viewBox=\"0 0 "
        + number(width)
        + " "
        + number(height)
        + "\" "
        + FONT
        + " fill=\"#000\">\n<title>"
        + Html.text(title)
        + "</title>\n<desc>"
        + Html.text(description)
        + "</desc>\n"
        + body
        + "</svg>\n";
  }

  /** Points of a path. */
  static final class Path {
    private final StringBuilder text = new StringBuilder();

    Path to(double x, double y) {
      Numbers.appendFixed(text.append(text.length() == 0 ? "M" : " L"), x, DECIMALS);
      Numbers.appendFixed(text.append(' '), y, DECIMALS);
      return this;
    }

    Path close() {
      text.append(" Z");
      return this;
    }
  }
}
