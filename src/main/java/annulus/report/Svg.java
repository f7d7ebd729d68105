package annulus.report;

import annulus.quantity.Numbers;

/**
 * One SVG picture, measured in millimetres so that a stated scale holds on paper. Black and greys
 * only; no script, no reference to anything outside.
 */
final class Svg {
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
    return Numbers.fixed(value, 2);
  }

  /** A straight line; {@code style} holds stroke attributes. */
  Svg line(double x1, double y1, double x2, double y2, String style) {
    return element("line", at("x1", x1) + at("y1", y1) + at("x2", x2) + at("y2", y2) + style);
  }

  Svg rectangle(double x, double y, double w, double h, String style) {
    double shown = Math.max(0, w);
    return element(
        "rect",
        at("x", x) + at("y", y) + at("width", shown) + at("height", Math.max(0, h)) + style);
  }

  /** A path made with {@link Path}. */
  Svg path(Path path, String style) {
    return element("path", "d=\"" + path.text() + "\" " + style);
  }

  /**
   * A label.
   *
   * @param anchor start, middle or end
   * @param size font size, mm
   */
  Svg text(double x, double y, String anchor, double size, String style, String text) {
    body.append("<text ")
        .append(at("x", x))
        .append(at("y", y))
        .append("text-anchor=\"")
        .append(anchor)
        .append("\" ")
        .append(at("font-size", size))
        .append(style)
        .append('>')
        .append(Html.text(TextLines.printable(text)))
        .append("</text>\n");
    return this;
  }

  private Svg element(String name, String attributes) {
    body.append('<').append(name).append(' ').append(attributes).append("/>\n");
    return this;
  }

  private static String at(String name, double value) {
    return name + "=\"" + number(value) + "\" ";
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
        + "\" font-family=\"Liberation Sans, Arial, Helvetica, sans-serif\" fill=\"#000\">\n<title>"
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
      text.append(text.length() == 0 ? "M" : " L").append(number(x)).append(' ').append(number(y));
      return this;
    }

    Path close() {
      text.append(" Z");
      return this;
    }

    private String text() {
      return text.toString();
    }
  }
}
