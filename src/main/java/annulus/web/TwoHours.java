package annulus.web;

import java.time.Duration;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A time typed in the hour that the clock shows twice in autumn. A field for date and time can't
 * hold which of the two is meant, so that it is asked.
 */
final class TwoHours extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final String field;
  private final String typed;
  private final ZoneId zone;

  private TwoHours(String field, String typed, ZoneId zone) {
    super(typed + " happens twice");
    this.field = field;
    this.typed = typed;
    this.zone = zone;
  }

  /**
   * Requires that a time is not shown twice.
   *
   * @param field name of its field
   * @throws TwoHours when it is
   */
  static void refuse(String field, String typed, ZoneId zone) {
    if (!choices(typed, zone).isEmpty()) {
      throw new TwoHours(field, typed, zone);
    }
  }

  /**
   * What a time may mean, in words by the time with its offset; none where it is shown once or not
   * at all, has an offset already or is no time.
   */
  static Map<String, String> choices(String typed, ZoneId zone) {
    Map<String, String> found = new LinkedHashMap<>();
    try {
      String written = written(typed);
      LocalDateTime local = LocalDateTime.parse(written);
      List<ZoneOffset> offsets = zone.getRules().getValidOffsets(local);
      if (offsets.size() == 2) {
        Duration first = Duration.ofSeconds(offsets.get(0).getTotalSeconds());
        String later = ClockWords.length(first.minusSeconds(offsets.get(1).getTotalSeconds()));
        String hour = local.toLocalTime().toString();
        found.put(written + offsets.get(0), "the first " + hour);
        found.put(written + offsets.get(1), "the second " + hour + ", " + later + " later");
      }
    } catch (DateTimeParseException e) {
      return Map.of(); // said by whoever reads it
    }
    return found;
  }

  private static String written(String typed) {
    return typed.strip().replace(' ', 'T');
  }

  /**
   * Asks which of the two is meant, and sends all the rest again.
   *
   * @param post whether the form was posted
   * @param sent what it said
   */
  String page(String path, boolean post, Map<String, List<String>> sent, String who) {
    Markup page = new Markup();
    String hour = LocalDateTime.parse(written(typed)).toLocalTime().toString();
    page.element("h1", "Which " + hour + "?");
    page.open("div", "class", "problem", "role", "alert");
    page.element(
        "p",
        "The clock goes back that night and shows " + hour + " twice. Nothing was written yet.");
    page.close().open("form", "method", post ? "post" : "get", "action", path);
    sent.forEach(
        (name, values) ->
            values.stream()
                .filter(v -> !name.equals(field))
                .forEach(v -> FormField.hidden(page, name, v)));
    page.open("div", "class", "acts");
    int number = 1;
    for (Map.Entry<String, String> choice : choices(typed, zone).entrySet()) {
      page.open("button", "type", "submit", "name", field, "value", choice.getKey());
      page.element("span", "" + number++, "class", "mark", "aria-hidden", "true");
      String words = choice.getValue();
      page.text(words.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + words.substring(1));
      page.close();
    }
    page.close().close();
    return Layout.page("Which " + hour + "?", Layout.Place.NONE, who, page);
  }
}
