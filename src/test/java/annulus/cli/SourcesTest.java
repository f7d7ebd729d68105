package annulus.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.Advice;
import annulus.advice.OrderText;
import annulus.report.SourceList;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Each figure in an answer is input, law of nature, or a row of {@code data/}. */
class SourcesTest {
  private static final String DATA = data();
  private static final Set<Double> NUMBERS = numbers();

  /** What an answer computes from rows; its source is that of the row it came from. */
  private static final Set<String> COMPUTED =
      Set.of(
          "surface factor",
          "gap factor, typical",
          "gap factor, sure side",
          "spread",
          "spread factor",
          "rate at the planned temperature");

  static List<Path> orders() throws IOException {
    try (Stream<Path> files = Files.list(Path.of("demo-data/orders"))) {
      return files.sorted().toList();
    }
  }

  /** All tables as they stand in the folder, read without the program's own readers. */
  private static String data() {
    StringBuilder all = new StringBuilder();
    try (Stream<Path> files = Files.list(Path.of("data"))) {
      for (Path file : files.filter(Files::isRegularFile).sorted().toList()) {
        Files.readAllLines(file).stream()
            .filter(l -> !l.startsWith("#"))
            .forEach(l -> all.append(l).append('\n'));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return all.toString();
  }

  private static Set<Double> numbers() {
    Set<Double> numbers = new HashSet<>();
    Matcher number = Pattern.compile("-?[0-9]+(\\.[0-9]+)?([eE]-?[0-9]+)?").matcher(DATA);
    while (number.find()) {
      numbers.add(Double.parseDouble(number.group()));
    }
    return numbers;
  }

  private static boolean inData(String source) {
    String plain = source.replace("\"", "\"\"");
    return DATA.contains(source) || DATA.contains(plain);
  }

  private static Advice advice(Path order) {
    try {
      return OrderText.ADVISOR.advise(OrderText.read(Files.readString(order)));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @ParameterizedTest
  @MethodSource("orders")
  void each_number_listed_stands_in_the_data_with_its_source(Path order) {
    List<SourceList.Entry> list = SourceList.of(advice(order), OrderText.KNOWLEDGE);
    assertTrue(list.size() > 20, order + ": " + list.size());
    for (SourceList.Entry entry : list) {
      if (entry.provenance().source().equals("law of nature")) {
        continue;
      }
      assertTrue(inData(entry.provenance().source()), entry.toString());
      entry
          .numbers()
          .forEach((name, value) -> assertTrue(NUMBERS.contains(value), entry + ": " + name));
    }
  }

  @ParameterizedTest
  @MethodSource("orders")
  void each_figure_of_an_answer_is_input_or_computed_from_rows_or_listed(Path order) {
    Advice advice = advice(order);
    Set<Double> listed = new HashSet<>();
    SourceList.of(advice, OrderText.KNOWLEDGE).forEach(e -> listed.addAll(e.numbers().values()));
    for (Advice.Figure figure : advice.figures()) {
      if (figure.provenance().source().equals("input")) {
        continue;
      }
      assertTrue(inData(figure.provenance().source()), figure.toString());
      assertTrue(
          COMPUTED.contains(figure.id()) || listed.contains(figure.value()), figure.toString());
    }
  }

  @Test
  void the_command_prints_every_row_with_source_and_confidence() {
    CliRun run = CliRun.of("sources", "demo-data/orders/04-cold-shop.json");
    assertEquals(0, run.code(), run.err());
    assertTrue(run.out().contains("gas constant"), run.out());
    assertTrue(run.out().contains("[low; common practice, no source]"), run.out());
    assertTrue(run.out().contains("policy wanted-confidence"), run.out());
    assertFalse(run.out().lines().anyMatch(l -> l.codePointCount(0, l.length()) > 100), run.out());
  }

  /** Every number of every rule, spoken or silent, and every row of the hold tables is listed. */
  @Test
  void no_number_of_a_rule_or_of_the_hold_is_left_out() throws IOException {
    Advice advice = advice(Path.of("demo-data/orders/01-good-fit.json"));
    Set<Double> listed = new HashSet<>();
    List<SourceList.Entry> entries = SourceList.of(advice, OrderText.KNOWLEDGE);
    entries.stream()
        .filter(e -> e.what().startsWith("rule "))
        .forEach(e -> listed.addAll(e.numbers().values()));
    Matcher limit =
        Pattern.compile("\"(?:above|below|atLeast|atMost)\": *(-?[0-9.]+)")
            .matcher(Files.readString(Path.of("data/rules.json")));
    int found = 0;
    while (limit.find()) {
      found++;
      assertTrue(listed.contains(Double.parseDouble(limit.group(1))), limit.group());
    }
    assertTrue(found > 15, found + " numbers of rules");
    for (String what : List.of("hold, largest pressure of a bond", "volume, wetting film")) {
      assertTrue(entries.stream().anyMatch(e -> e.what().equals(what)), what);
    }
  }

  @Test
  void the_command_wants_one_order() {
    assertEquals(2, CliRun.of("sources").code());
    assertEquals(2, CliRun.of("sources", "none.json").code());
  }
}
