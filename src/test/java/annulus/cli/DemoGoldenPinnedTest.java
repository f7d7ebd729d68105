package annulus.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Pinned: what every demo order prints, byte for byte. A difference is no proof of a fault, but it
 * must be meant: read it, then run this class once with {@code -Dannulus.golden=write}.
 */
class DemoGoldenPinnedTest {
  private static final Path ORDERS = Path.of("demo-data/orders");
  private static final Path GOLDEN = Path.of("src/test/resources/golden");
  private static final String HOW =
      "if this is meant: mvn -B test -Dtest=DemoGoldenPinnedTest -Dannulus.golden=write";

  /** Orders whose text is pinned with all its reasons. */
  private static final Set<String> WITH_WHY =
      Set.of("01-good-fit", "09-carbon-frame", "12-hot-service");

  @TempDir Path folder;

  static Stream<String> names() throws IOException {
    try (Stream<Path> files = Files.list(ORDERS)) {
      return files
          .map(f -> f.getFileName().toString().replace(".json", ""))
          .sorted()
          .toList()
          .stream();
    }
  }

  @ParameterizedTest
  @MethodSource("names")
  void the_text_is_as_pinned(String name) throws IOException {
    String order = ORDERS.resolve(name + ".json").toString();
    CliRun run =
        WITH_WHY.contains(name) ? CliRun.of("advise", order, "--why") : CliRun.of("advise", order);
    pinned(name + ".txt", "exit code " + run.code() + "\n" + run.out());
  }

  @ParameterizedTest
  @MethodSource("names")
  void the_json_is_as_pinned(String name) throws IOException {
    CliRun run = CliRun.of("advise", ORDERS.resolve(name + ".json").toString(), "--json");
    pinned(name + ".json", run.out());
  }

  @ParameterizedTest
  @MethodSource("names")
  void the_card_is_as_pinned(String name) throws IOException {
    Path card = folder.resolve("card.html");
    CliRun.of("advise", ORDERS.resolve(name + ".json").toString(), "--card", card.toString());
    pinned(name + ".html", Files.readString(card));
  }

  @Test
  void the_job_lists_are_as_pinned() throws IOException {
    for (String list : List.of("jobs", "jobs-semicolon")) {
      Path out = folder.resolve("results.csv");
      CliRun run =
          CliRun.of("advise", "--batch", "demo-data/" + list + ".csv", "--out", out.toString());
      pinned(list + ".csv", Files.readString(out));
      pinned(list + ".err.txt", "exit code " + run.code() + "\n" + run.err());
    }
  }

  @Test
  void nothing_is_pinned_that_is_no_longer_made() throws IOException {
    Set<String> made = new TreeSet<>();
    names().forEach(n -> made.addAll(List.of(n + ".txt", n + ".json", n + ".html")));
    for (String list : List.of("jobs", "jobs-semicolon")) {
      made.addAll(List.of(list + ".csv", list + ".err.txt"));
    }
    Set<String> kept = new TreeSet<>();
    try (Stream<Path> files = Files.list(GOLDEN)) {
      files.forEach(f -> kept.add(f.getFileName().toString()));
    }
    kept.removeAll(made);
    assertEquals(Set.of(), kept, "delete these files");
  }

  private static void pinned(String name, String actual) throws IOException {
    Path file = GOLDEN.resolve(name);
    if ("write".equals(System.getProperty("annulus.golden"))) {
      Files.createDirectories(GOLDEN);
      Files.writeString(file, actual);
      return;
    }
    if (!Files.exists(file)) {
      fail(file + " is missing; " + HOW);
    }
    String expected = Files.readString(file);
    if (!expected.equals(actual)) {
      fail(file + firstDifference(expected, actual) + "\n" + HOW);
    }
  }

  private static String firstDifference(String expected, String actual) {
    List<String> old = new ArrayList<>(List.of(expected.split("\n", -1)));
    List<String> now = new ArrayList<>(List.of(actual.split("\n", -1)));
    int line = 0;
    while (line < Math.min(old.size(), now.size()) && old.get(line).equals(now.get(line))) {
      line++;
    }
    String was = line < old.size() ? old.get(line) : "(ends)";
    String is = line < now.size() ? now.get(line) : "(ends)";
    return " differs from line " + (line + 1) + ":\n  was: " + was + "\n  is:  " + is;
  }
}
