package annulus.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Instant;
import org.junit.jupiter.api.Test;

/** RFC 5545, September 2009: examples and rules as printed. */
class CalendarFilePublishedTest {

  /** Section 3.3.11, the example of a TEXT value of three lines. */
  @Test
  void a_text_of_three_lines_is_written_as_printed() {
    String text =
        new ContentLines()
            .text("DESCRIPTION", "Project XYZ Final Review\nConference Room - 3B\nCome Prepared.")
            .toString();
    String unfolded = text.replace("\r\n ", "");
    assertEquals(
        "DESCRIPTION:Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.\r\n",
        unfolded);
  }

  /** Section 3.3.11: backslash, comma and semicolon are escaped, a colon is not. */
  @Test
  void the_four_characters_are_escaped() {
    assertEquals(
        "SUMMARY:a\\\\b\\;c\\,d:e \"f\"\r\n",
        new ContentLines().text("SUMMARY", "a\\b;c,d:e \"f\"").toString());
  }

  /** Section 3.3.5, form 2: 19980119T070000Z is 07:00 UTC on January 19, 1998. */
  @Test
  void an_instant_is_written_in_utc() {
    assertEquals(
        "DTSTART:19980119T070000Z\r\n",
        new ContentLines().instant("DTSTART", Instant.parse("1998-01-19T07:00:00Z")).toString());
  }

  /** Section 3.1: lines of text should not be longer than 75 octets, excluding the line break. */
  @Test
  void a_line_of_75_octets_stays_whole_and_one_of_76_is_folded() {
    String value = "x".repeat(75 - "NAME:".length());
    assertEquals("NAME:" + value + "\r\n", new ContentLines().line("NAME", value).toString());
    assertEquals(
        "NAME:" + value + "\r\n y\r\n", new ContentLines().line("NAME", value + "y").toString());
  }
}
