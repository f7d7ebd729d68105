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
  /** What three lines hold in the widest of the fonts. */
  private static final int REASON_CHARACTERS = 115;

  /** The shop's words may be of any length: what runs on behind them ends with a mark. */
  private static final String STYLE =
      """
      @page { size: 62mm 40mm; margin: 0 }
      * { box-sizing: border-box; margin: 0; padding: 0 }
      html { background: #fff; color: #000 }
      body { width: 62mm; height: 39.5mm; padding: 2mm 2.5mm; overflow-wrap: anywhere;
        font-family:\s"""
          + PrintFont.FAMILIES
          + """
       }
      h1 { font-size: 12pt; line-height: 1.1; overflow: hidden; display: -webkit-box;
        -webkit-box-orient: vertical; -webkit-line-clamp: 2 }
      p { font-size: 9pt; line-height: 1.2 }
      .lot, .class { white-space: nowrap; overflow: hidden; text-overflow: ellipsis }
      .row { display: flex; gap: 2mm; font-size: 8pt }
      .opened { flex: none }
      .use-by { font-size: 13pt; font-weight: bold; border: 0.5mm solid #000; padding: 0.5mm;
        margin: 1mm 0; text-align: center }
      .reason { font-size: 7.5pt; line-height: 1.15 }
      """;

  private String useBy() {
    if (!check.usable()) {
      return check.lot().isHeldBack() ? "HELD: DO NOT USE" : "DO NOT USE";
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
    return rule + renew();
  }

  private String renew() {
    return check.lot().opened().isEmpty() ? "; sooner once opened: print again then" : "";
  }

  /** The reason, shorter where the tag has no room for all of it. */
  private String reasonOnTag() {
    String whole = reason();
    if (whole.codePointCount(0, whole.length()) <= REASON_CHARACTERS) {
      return whole;
    }
    return check.against().isEmpty()
        ? check.useBy().map(StockWords::ruleAlone).orElse("") + renew()
        : StockWords.againstWithin(check, REASON_CHARACTERS);
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
        + "</bdi></h1>\n<p class=\"row\"><span class=\"class\">class "
        + Html.text(check.item().id())
        + "</span><span class=\"opened\">"
        + Html.text(opened())
        + "</span></p>\n<p class=\"lot\">lot <bdi>"
        + Html.text(check.lot().lot())
        + "</bdi></p>\n<p class=\"use-by\">"
        + Html.text(useBy())
        + "</p>\n<p class=\"reason\">"
        + Html.text(reasonOnTag())
        + "</p>\n</body>\n</html>\n";
  }
}
