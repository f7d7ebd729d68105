package annulus.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.statistics.Statistics;

/** The short way through cells as nearly all loggers write them gives what the patterns give. */
class LoggerQuickPropertyTest {
  @Provide
  Arbitrary<String> numbers() {
    Arbitrary<String> sign = Arbitraries.of("", "-", "+");
    Arbitrary<String> digits = Arbitraries.strings().numeric().ofMaxLength(8);
    Arbitrary<String> mark = Arbitraries.of("", ".", ",", " ");
    Arbitrary<String> tail = Arbitraries.of("", "", "", " C", "°F", "x", ".");
    return Combinators.combine(sign, digits, mark, digits, tail)
        .as((s, a, m, b, t) -> s + a + m + b + t);
  }

  @Property
  void a_number_is_read_as_the_pattern_reads_it(@ForAll("numbers") String cell) {
    LoggerNumber quick = LoggerNumber.of(cell);
    assertEquals(LoggerNumber.written(cell), quick);
    Statistics.label("number").collect(quick.isNumber());
    Statistics.label("number").coverage(c -> c.check(true).percentage(p -> p > 5));
  }

  @Provide
  Arbitrary<String> times() {
    Arbitrary<String> two =
        Arbitraries.frequencyOf(
            net.jqwik.api.Tuple.of(
                9, Arbitraries.integers().between(0, 61).map(i -> (i < 10 ? "0" : "") + i)),
            net.jqwik.api.Tuple.of(1, Arbitraries.of("1", "a1", "٣٣", "")));
    Arbitrary<String> year = Arbitraries.of("2026", "1999", "0026", "26", "20x6");
    Arbitrary<String> mark = Arbitraries.of("-", "/", ".");
    Arbitrary<String> date =
        Combinators.combine(two, two, year, mark, mark, Arbitraries.of(true, false))
            .as((a, b, y, m, n, first) -> first ? y + m + a + n + b : a + m + b + n + y);
    Arbitrary<String> clock =
        Combinators.combine(two, two, two, Arbitraries.of(true, false))
            .as((h, m, s, seconds) -> h + ":" + m + (seconds ? ":" + s : ""));
    return Combinators.combine(
            date,
            Arbitraries.of(" ", "T", ", "),
            clock,
            Arbitraries.of("", "", "", "Z", " AM", ".5"))
        .as((d, gap, c, end) -> d + gap + c + end);
  }

  @Property(tries = 5000)
  void a_time_is_read_as_the_patterns_read_it(@ForAll("times") String text) {
    assertEquals(LoggerStamp.written(text), LoggerStamp.parse(text));
    Statistics.label("a time").collect(LoggerStamp.parse(text).isPresent());
    Statistics.label("a time").coverage(c -> c.check(true).percentage(p -> p > 5));
  }

  @Provide
  Arbitrary<String> texts() {
    return Arbitraries.of("\n", "\r", "\r\n", "a", "bc;d", "\uFEFF", "x".repeat(4000), "")
        .list()
        .ofMaxSize(30)
        .map(l -> String.join("", l));
  }

  @Property
  void lines_are_those_between_any_line_ends(@ForAll("texts") String text) throws IOException {
    List<String> expected = new ArrayList<>(List.of(text.split("\r\n|\r|\n", -1)));
    if (expected.get(expected.size() - 1).isEmpty()) {
      expected.remove(expected.size() - 1);
    }
    if (!expected.isEmpty() && expected.get(0).startsWith("\uFEFF")) {
      expected.set(0, expected.get(0).substring(1));
    }
    boolean tooLong = text.lines().anyMatch(l -> l.length() > 4096);
    List<String> found = new ArrayList<>();
    try (LoggerLines lines = new LoggerLines("log", new StringReader(text))) {
      for (LoggerLine line = lines.next(); line != null; line = lines.next()) {
        found.add(line.text());
        assertEquals(found.size(), lines.number());
      }
      assertTrue(!tooLong);
      assertEquals(expected, found);
    } catch (InputRefused e) {
      assertTrue(tooLong, text);
    }
  }
}
