package annulus.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.util.List;
import java.util.regex.Pattern;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.statistics.Statistics;

/** The quick ways through usual cells read what the general ones read. */
class FastReadingPropertyTest {
  private static final Pattern BETWEEN = Pattern.compile("[;\\s]+(?![A-Za-z\"])");
  private static final Pattern BARE = Pattern.compile("[0-9]+(\\.[0-9]+)?");

  @Provide
  Arbitrary<String> cells() {
    return Arbitraries.strings().withChars("0123456789. ;\tminC\"+-").ofMaxLength(14);
  }

  @Property(tries = 5000)
  void readings_in_a_cell_stand_apart_as_the_pattern_says(@ForAll("cells") String cell) {
    String stripped = cell.strip();
    List<String> words = FlatOrder.words(stripped);
    Statistics.label("several").collect(words.size() > 1);
    assertEquals(List.of(BETWEEN.split(stripped)), words);
  }

  @Property(tries = 5000)
  void a_bare_number_is_digits_with_a_point_between(@ForAll("cells") String cell) {
    boolean bare = Measures.isBare(cell);
    Statistics.label("bare").collect(bare);
    assertEquals(BARE.matcher(cell).matches(), bare);
    if (bare) {
      assertTrue(Double.isFinite(Double.parseDouble(cell)));
    }
  }

  @Provide
  Arbitrary<String> times() {
    Arbitrary<String> dates =
        Arbitraries.of(
            "2027-03-12T09:00", "2028-02-29T23:59", "0000-01-01T00:00", "9999-12-31T12:30");
    Arbitrary<Integer> places = Arbitraries.integers().between(0, 15);
    Arbitrary<Character> marks = Arbitraries.of('0', '1', '2', '3', '9', 'T', 't', '-', ':', ' ');
    return Combinators.combine(dates, places, marks, Arbitraries.of("", ":00", ":61"))
        .as((d, p, m, end) -> d.substring(0, p) + m + d.substring(p + 1) + end);
  }

  @Property(tries = 5000)
  void a_clock_time_is_read_as_the_library_reads_it(@ForAll("times") String written) {
    LocalDateTime expected;
    try {
      expected = LocalDateTime.parse(written);
    } catch (DateTimeException e) {
      Statistics.label("time").collect("refused");
      assertThrows(DateTimeException.class, () -> ClockTimes.parsed(written));
      return;
    }
    Statistics.label("time").collect("read");
    assertEquals(expected, ClockTimes.parsed(written));
  }
}
