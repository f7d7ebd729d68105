package annulus.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class TextLinesTest {
  @Test
  void a_beginning_that_leaves_no_room_stands_alone() {
    String lot = "L".repeat(98);
    assertEquals(lot + "\n    use by 2027-04-05\n", lines(lot, "use by 2027-04-05"));
  }

  @Test
  void nothing_is_lost_however_lengththe_beginning_is() {
    for (int length = 0; length < 300; length += 7) {
      String text = lines("x".repeat(length), "one two three ".repeat(20));
      assertEquals(length, text.chars().filter(c -> c == 'x').count());
      long words = Pattern.compile("one|two|three").matcher(text).results().count();
      assertEquals(60, words, text);
      text.lines().forEach(l -> assertTrue(l.length() <= 100, l));
    }
  }

  private static String lines(String first, String text) {
    return new TextLines().hanging(first, text).toString();
  }
}
