package annulus.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.quantity.Units;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
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

  private static final Pattern MEASURE =
      Pattern.compile("([+-]?[0-9]+(?:\\.[0-9]+)?|[+-]?\\.[0-9]+)\\s*([A-Za-zµμ°\"]*)");
  private static final Pattern OFFSET = Pattern.compile(".*(Z|[+-][0-9]{2}:?[0-9]{2})$");

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
  Arbitrary<String> measures() {
    Arbitrary<String> numbers = Arbitraries.strings().withChars("0123456789.,+- ").ofMaxLength(6);
    Arbitrary<String> units =
        Arbitraries.of("", "C", " °C", "\tF", "f", "mm", "µ", "\u2003C", "x1");
    return Combinators.combine(numbers, units).as((n, u) -> n + u);
  }

  @Property(tries = 5000)
  void a_temperature_is_read_as_the_pattern_says(@ForAll("measures") String written) {
    Node.Text text = new Node.Text(new Node.Place("", 1, 1), written);
    OptionalDouble read = new Measures(new Problems()).celsius(text, "", -1e9, 1e9);
    Matcher matcher = MEASURE.matcher(written.strip());
    String unit = matcher.matches() ? matcher.group(2).toLowerCase(Locale.ROOT) : "none";
    boolean fahrenheit = unit.equals("f");
    boolean known = fahrenheit || unit.isEmpty() || unit.equals("c") || unit.equals("°c");
    Statistics.label("temperature").collect(known);
    assertEquals(known, read.isPresent(), written);
    if (known) {
      double number = Double.parseDouble(matcher.group(1));
      assertEquals(
          fahrenheit ? Units.celsiusFromFahrenheit(number) : number, read.getAsDouble(), written);
    }
  }

  @Property(tries = 5000)
  void a_time_has_an_offset_where_the_pattern_says(@ForAll("offsets") String written) {
    boolean expected = OFFSET.matcher(written).matches();
    Statistics.label("offset").collect(expected);
    assertEquals(expected, ClockTimes.hasOffset(written), written);
  }

  @Provide
  Arbitrary<String> offsets() {
    return Arbitraries.strings()
        .withChars("0123456789+-:Z")
        .ofMaxLength(7)
        .map(end -> "2027-03-12T09:00" + end);
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
