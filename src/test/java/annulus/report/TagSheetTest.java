package annulus.report;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.quantity.InvalidValue;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class TagSheetTest {
  private static final ZoneId VIENNA = ZoneId.of("Europe/Vienna");

  private static String html(String reference, String notBefore, String... meanwhile) {
    return titled(reference, "", notBefore, meanwhile);
  }

  private static String titled(
      String reference, String title, String notBefore, String... meanwhile) {
    return limited(reference, title, notBefore, Optional.empty(), meanwhile);
  }

  private static String limited(
      String reference,
      String title,
      String notBefore,
      Optional<String> limit,
      String... meanwhile) {
    Instant instant = Instant.parse(notBefore);
    return new TagSheet(reference, title, instant, VIENNA, List.of(meanwhile), limit).html();
  }

  @Test
  void the_tag_says_for_how_long_the_use_is_limited_after_that_time() {
    String when = "2027-03-12T12:45:00Z";
    String limit = "Limited use until Sunday 14 March 2027, 19:42: no <heat>.";
    String page = limited("L-1", "", when, Optional.of(limit));
    assertTrue(
        page.contains(
            "<p class=\"limited\">Limited use until Sunday 14 March 2027, 19:42: no &lt;heat&gt;.</p>"),
        page);
    assertTrue(page.indexOf("class=\"limited\"") > page.indexOf("class=\"hour\""));
    assertFalse(html("L-1", when).contains("class=\"limited\""));
    String longest = limited("L-1", "", when, Optional.of("n".repeat(160)));
    assertTrue(longest.contains("n".repeat(160)));
    assertThrows(InvalidValue.class, () -> limited("L-1", "", when, Optional.of("n".repeat(161))));
  }

  @Test
  void the_title_tells_two_tags_with_one_reference_apart() {
    String page = titled("L-1", "Cup <left>", "2027-03-13T09:15:00Z");
    assertTrue(page.contains("<p class=\"title\">Cup &lt;left&gt;</p>"), page);
    assertFalse(html("L-1", "2027-03-13T09:15:00Z").contains("class=\"title\""));
    String longest = titled("L-1", "ü".repeat(100), "2027-03-13T09:15:00Z");
    assertTrue(longest.contains(">" + "ü".repeat(100) + "<"), longest);
    String cut = titled("L-1", "ü".repeat(101), "2027-03-13T09:15:00Z");
    assertTrue(cut.contains(">" + "ü".repeat(99) + "…<"), cut);
  }

  @Test
  void the_tag_says_weekday_date_and_hour_of_the_shop() {
    // 13 March 2027 is a Saturday; Vienna is at +01:00
    String page = html("L-0417", "2027-03-13T09:15:00Z", "Push, do not ride");
    assertTrue(page.contains("<h1>DO NOT USE BEFORE</h1>"));
    assertTrue(page.contains("<p class=\"day\">Saturday</p>"));
    assertTrue(page.contains("<p class=\"date\">13 March 2027</p>"));
    assertTrue(page.contains("<p class=\"hour\">10:15</p>"));
    assertTrue(page.contains("<li>Push, do not ride</li>"));
    assertTrue(page.contains("Job <bdi>L-0417</bdi>"));
    assertFalse(page.contains("clock goes back"));
  }

  @Test
  void the_page_is_a6_without_script() {
    String page = html("L-0417", "2027-03-13T09:15:00Z");
    assertTrue(page.contains("@page { size: 105mm 148mm"));
    assertFalse(page.contains("<script"));
    assertFalse(page.contains("http"));
  }

  @Test
  void seconds_round_up_so_that_the_tag_is_never_early() {
    assertTrue(html("L", "2027-03-13T22:59:00.001Z").contains("<p class=\"hour\">00:00</p>"));
    assertTrue(html("L", "2027-03-13T22:59:00.001Z").contains("Sunday</p>"));
    assertTrue(html("L", "2027-03-13T22:59:00Z").contains("<p class=\"hour\">23:59</p>"));
  }

  @Test
  void on_the_night_the_clock_goes_back_the_tag_says_which_hour() {
    assertTrue(html("L", "2027-10-31T00:15:00Z").contains("the first 02:15 (clock goes back)"));
    assertTrue(html("L", "2027-10-31T01:15:00Z").contains("the second 02:15 (clock goes back)"));
    assertFalse(html("L", "2027-10-31T02:15:00Z").contains("clock goes back"));
  }

  @Test
  void typed_text_is_escaped() {
    String page = html("<b>&", "2027-03-13T09:15:00Z", "<i>\"x\"</i>");
    assertTrue(page.contains("<title>Tag &lt;b&gt;&amp;</title>"));
    assertTrue(page.contains("<bdi>&lt;b&gt;&amp;</bdi>"));
    assertTrue(page.contains("<li>&lt;i&gt;\"x\"&lt;/i&gt;</li>"));
  }

  @Test
  void what_does_not_fit_on_the_tag_is_refused() {
    String when = "2027-03-13T09:15:00Z";
    assertTrue(html("x".repeat(30), when, "y".repeat(50)).contains("y".repeat(50)));
    assertThrows(InvalidValue.class, () -> html("x".repeat(31), when));
    assertThrows(InvalidValue.class, () -> html("L", when, "y".repeat(51)));
    assertThrows(InvalidValue.class, () -> html("L", when, "a", "b", "c", "d"));
    assertThrows(InvalidValue.class, () -> html(" ", when));
  }
}
