package annulus.report;

import annulus.quantity.Numbers;
import java.util.Locale;

/** A small picture, black on white: no colour has to be told apart. */
final class StockSvg {
  private final StringBuilder body = new StringBuilder();

  StockSvg text(double x, double y, double size, String anchor, String words) {
    body.append(
        String.format(
            Locale.ROOT,
            "<text x=\"%s\" y=\"%s\" font-size=\"%s\" text-anchor=\"%s\">%s</text>\n",
            at(x),
            at(y),
            at(size),
            anchor,
            Html.text(words)));
    return this;
  }

  /** A box; its fill is a grey or a pattern, its words are read out. */
  StockSvg box(double x, double y, double width, double height, String fill, String words) {
    body.append(
        String.format(
            Locale.ROOT,
            "<rect x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\" fill=\"%s\" stroke=\"#000\""
                + " stroke-width=\"0.6\"><title>%s</title></rect>\n",
            at(x),
            at(y),
            at(width),
            at(height),
            fill,
            Html.text(words)));
    return this;
  }

  StockSvg line(double x1, double y1, double x2, double y2) {
    body.append(
        String.format(
            Locale.ROOT,
            "<line x1=\"%s\" y1=\"%s\" x2=\"%s\" y2=\"%s\" stroke=\"#000\"/>\n",
            at(x1),
            at(y1),
            at(x2),
            at(y2)));
    return this;
  }

  private static String at(double value) {
    return Numbers.fixed(value, 1);
  }

  String picture(double width, double height, String title) {
    return "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 "
        + at(width)
        + " "
        + at(height)
        + "\" role=\"img\" aria-label=\""
        + Html.attr(title)
        + "\" "
        + Svg.FONT
        + ">\n<title>"
        + Html.text(title)
        + "</title>\n<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n"
        + body
        + "</svg>\n";
  }
}
