package annulus.report;

import annulus.stock.LotCheck;
import java.time.LocalDate;

/**
 * A small label for a container, from the shop's own text. It says what the shop typed and when to
 * use it by; it classifies no hazard.
 *
 * @param check the lot as judged
 * @param on the day of printing
 */
public record LotTag(LotCheck check, LocalDate on) {
  private static final String STYLE =
      """
      @page { size: 62mm 40mm; margin: 0 }
      * { box-sizing: border-box; margin: 0; padding: 0 }
      html { background: #fff; color: #000 }
      body { width: 62mm; min-height: 39mm; padding: 2.5mm;
        font-family: "Liberation Sans", Arial, Helvetica, "DejaVu Sans Condensed", sans-serif;
        font-size-adjust: 0.519; overflow-wrap: anywhere }
      h1 { font-size: 12pt; line-height: 1.1 }
      p { font-size: 9pt; line-height: 1.25 }
      .use-by { font-size: 13pt; font-weight: bold; border: 0.5mm solid #000; padding: 1mm;
        margin: 1mm 0; text-align: center }
      """;

  private String useBy() {
    if (!check.usable()) {
      return "DO NOT USE";
    }
    return "USE BY " + check.useBy().map(u -> u.date().toString()).orElse("unknown");
  }

  private String opened() {
    return check.lot().opened().map(d -> "opened " + d).orElse("opened ____-__-__");
  }

  /** The tag as lines of text. */
  public String text() {
    TextLines out = new TextLines();
    String label = check.lot().label();
    out.line(label.isEmpty() ? check.item().name() : label);
    out.line("class " + check.item().id());
    out.line("lot " + check.lot().lot());
    out.line(opened());
    out.line(useBy());
    out.line(reason());
    return out.toString();
  }

  private String reason() {
    if (!check.against().isEmpty()) {
      return StockWords.against(check);
    }
    String rule = check.useBy().map(StockWords::rule).orElse("");
    boolean sealed = check.lot().opened().isEmpty();
    return rule + (sealed ? "; sooner once opened: print again then" : "");
  }

  /** The tag as one HTML page; write it as UTF-8. */
  public String html() {
    String label = check.lot().label();
    return "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<title>"
        + Html.text("Lot " + check.lot().lot())
        + "</title>\n<style>\n"
        + STYLE
        + "</style>\n</head>\n<body>\n<h1><bdi>"
        + Html.text(label.isEmpty() ? check.item().name() : label)
        + "</bdi></h1>\n<p>class "
        + Html.text(check.item().id())
        + "</p>\n<p>lot <bdi>"
        + Html.text(check.lot().lot())
        + "</bdi></p>\n<p>"
        + Html.text(opened())
        + "</p>\n<p class=\"use-by\">"
        + Html.text(useBy())
        + "</p>\n<p>"
        + Html.text(reason())
        + "</p>\n</body>\n</html>\n";
  }
}
