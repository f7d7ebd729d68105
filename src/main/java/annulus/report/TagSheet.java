package annulus.report;

import annulus.quantity.Check;
import annulus.quantity.InvalidValue;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * An A6 tag to tie on the part, as one HTML page: black on white, readable at arm's length, the one
 * safe time and nothing that could be taken for an earlier one.
 *
 * @param jobReference what the shop calls the job, at most 30 characters
 * @param title what the joint is, so that two tags with one reference can be told apart; may be
 *     empty, and only its first 100 characters are printed
 * @param notBefore the first safe time; printed rounded up to the minute
 * @param zone the shop's time zone
 * @param meanwhile what may and may not be done until then, such as "Push, do not ride"; at most 3
 *     lines of at most 50 characters
 * @param limited what may not be done for a while after that time, at most 160 characters; empty
 *     where everything may
 */
public record TagSheet(
    String jobReference,
    String title,
    Instant notBefore,
    ZoneId zone,
    List<String> meanwhile,
    Optional<String> limited) {
  /** Characters of a job reference that fit on a tag. */
  public static final int LONGEST_REFERENCE = 30;

  private static final int LONGEST_TITLE = 100;
  private static final int LONGEST_LINE = 50;
  private static final int MOST_LINES = 3;
  private static final int LONGEST_LIMIT = 160;
  private static final DateTimeFormatter WEEKDAY =
      DateTimeFormatter.ofPattern("EEEE", Locale.ENGLISH);
  private static final DateTimeFormatter DATE =
      DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);
  private static final DateTimeFormatter HOUR =
      DateTimeFormatter.ofPattern("HH:mm", Locale.ENGLISH);

  private static final String STYLE =
      """
      @page { size: 105mm 148mm; margin: 0 }
      * { box-sizing: border-box; margin: 0; padding: 0 }
      html { background: #fff; color: #000 }
      body { width: 105mm; height: 147.5mm; padding: 6mm; display: flex; flex-direction: column;
        text-align: center; font-family:\s"""
          + PrintFont.FAMILIES
          + """
       }
      .hole { width: 6mm; height: 6mm; margin: 0 auto 3mm; border: 0.3mm dashed #000;
        border-radius: 50%; flex: none }
      .box { border: 1mm solid #000; padding: 3mm 1mm }
      h1 { font-size: 28pt; line-height: 1.05; border-bottom: 0.6mm solid #000;
        padding-bottom: 2.5mm; margin-bottom: 2.5mm }
      .day { font-size: 26pt; line-height: 1.15; font-weight: bold }
      .date { font-size: 24pt; line-height: 1.15; white-space: nowrap }
      .hour { font-size: 36pt; line-height: 1.1; font-weight: bold }
      .twice { font-size: 13pt; line-height: 1.2; font-weight: bold }
      .meanwhile { list-style: none; margin-top: 3mm }
      .meanwhile li { font-size: 14pt; line-height: 1.15; font-weight: bold; margin-top: 1mm;
        overflow-wrap: anywhere }
      .limited { margin-top: 2mm; border-top: 0.3mm solid #000; padding-top: 1.5mm;
        font-size: 12pt; line-height: 1.15; font-weight: bold }
      .job { margin-top: auto; padding-top: 1.5mm; border-top: 0.3mm solid #000; font-size: 13pt;
        font-weight: bold; line-height: 1.15; overflow-wrap: anywhere }
      .title { font-size: 11pt; line-height: 1.15; overflow-wrap: anywhere }
      """;

  /**
   * @throws InvalidValue when a text is empty or too long for the tag
   */
  public TagSheet {
    Check.text("jobReference", jobReference);
    requireShort("jobReference", jobReference, LONGEST_REFERENCE);
    meanwhile = List.copyOf(meanwhile);
    if (meanwhile.size() > MOST_LINES) {
      throw new InvalidValue(
          "meanwhile", meanwhile.size() + " lines do not fit", "at most " + MOST_LINES + " lines");
    }
    for (String line : meanwhile) {
      Check.text("meanwhile", line);
      requireShort("meanwhile", line, LONGEST_LINE);
    }
    limited.ifPresent(l -> requireShort("limited", l, LONGEST_LIMIT));
  }

  /** The whole page; write it as UTF-8. */
  public String html() {
    Instant minute = roundedUpToMinute(notBefore);
    LocalDateTime local = LocalDateTime.ofInstant(minute, zone);
    StringBuilder page = new StringBuilder();
    page.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<title>")
        .append(Html.text("Tag " + jobReference))
        .append("</title>\n<style>\n")
        .append(STYLE)
        .append("</style>\n</head>\n<body>\n<div class=\"hole\"></div>\n<div class=\"box\">\n")
        .append("<h1>DO NOT USE BEFORE</h1>\n");
    line(page, "day", WEEKDAY.format(local));
    line(page, "date", DATE.format(local));
    line(page, "hour", HOUR.format(local));
    new ShopTime(zone, minute).whichOfTwo(minute).ifPresent(w -> line(page, "twice", w));
    page.append("</div>\n");
    appendMeanwhile(page);
    limited.ifPresent(l -> line(page, "limited", l));
    page.append("<p class=\"job\">Job <bdi>")
        .append(Html.text(jobReference))
        .append("</bdi></p>\n");
    if (!title.isBlank()) {
      line(page, "title", TextLines.shortened(title.strip(), LONGEST_TITLE));
    }
    page.append("</body>\n</html>\n");
    return page.toString();
  }

  private void appendMeanwhile(StringBuilder page) {
    if (meanwhile.isEmpty()) {
      return;
    }
    page.append("<ul class=\"meanwhile\">\n");
    meanwhile.forEach(m -> page.append("<li>").append(Html.text(m)).append("</li>\n"));
    page.append("</ul>\n");
  }

  private static void line(StringBuilder page, String cssClass, String text) {
    page.append("<p class=\"")
        .append(cssClass)
        .append("\">")
        .append(Html.text(text))
        .append("</p>\n");
  }

  private static Instant roundedUpToMinute(Instant instant) {
    Instant minute = instant.truncatedTo(ChronoUnit.MINUTES);
    return minute.equals(instant) ? instant : minute.plus(1, ChronoUnit.MINUTES);
  }

  private static void requireShort(String field, String value, int longest) {
    int length = value.codePointCount(0, value.length());
    if (length > longest) {
      throw new InvalidValue(
          field, length + " characters do not fit", "at most " + longest + " characters");
    }
  }
}
