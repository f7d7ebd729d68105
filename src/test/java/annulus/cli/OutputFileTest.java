package annulus.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** No command writes over somebody's other work. */
class OutputFileTest {
  private static final String ORDER = "demo-data/orders/01-good-fit.json";
  private static final String SHOP = "demo-data/shop.json";
  private static final String STOCK = "demo-data/stock.csv";

  @TempDir Path folder;

  private static void refused(Path file, String... words) throws IOException {
    CliRun run = CliRun.of(words);
    assertEquals(2, run.code(), run.out() + run.err());
    assertTrue(run.err().contains(file.toString()), run.err());
    assertEquals("my work", Files.readString(file));
  }

  @Test
  void a_file_of_another_kind_is_never_written_over() throws IOException {
    Path work = Files.writeString(folder.resolve("work.txt"), "my work");
    String file = work.toString();
    refused(work, "advise", ORDER, "--card", file);
    refused(work, "advise", "--batch", "demo-data/jobs.csv", "--out", file);
    refused(work, "fit", "35 H7", "--picture", file);
    refused(work, "promise", ORDER, "--shop", SHOP, "--tag", file);
    refused(work, "promise", ORDER, "--shop", SHOP, "--picture", file);
    refused(work, "promise", ORDER, "--shop", SHOP, "--ics", file);
    refused(work, "stock", "cover", STOCK, "--picture", file);
    refused(work, "stock", "tag", STOCK, "--lot", "007", "--out", file);
  }

  @Test
  void a_calendar_file_that_is_none_is_not_written_over() throws IOException {
    Path work = Files.writeString(folder.resolve("work.ics"), "my work");
    refused(work, "promise", ORDER, "--shop", SHOP, "--ics", work.toString());
  }

  @Test
  void the_file_that_is_read_is_never_written_over() throws IOException {
    Path order = folder.resolve("order.html");
    Files.copy(Path.of(ORDER), order);
    String before = Files.readString(order);
    assertEquals(2, CliRun.of("advise", order.toString(), "--card", order.toString()).code());
    assertEquals(before, Files.readString(order));
  }

  @Test
  void a_ledger_and_every_other_input_is_never_written_over() throws IOException {
    for (String ending : List.of(".csv", ".html", ".svg")) {
      String ledger = folder.resolve("ledger" + ending).toString();
      CliRun.of("stock", "receive", "--ledger", ledger, "--from", STOCK, "--who", "Orla");
    }
    String csv = folder.resolve("ledger.csv").toString();
    String html = folder.resolve("ledger.html").toString();
    String svg = folder.resolve("ledger.svg").toString();
    String sheet = Files.copy(Path.of(STOCK), folder.resolve("stock.csv")).toString();
    List<String> label = Files.readAllLines(Path.of("demo-data/stock-labels.csv")).subList(0, 2);
    String labels = Files.write(folder.resolve("l.svg"), label).toString();
    String shop = folder.resolve("shop").toString();
    for (List<String> words :
        List.of(
            List.of("stock", "export", STOCK, "--ledger", csv, "--out", csv),
            List.of("stock", "export", sheet, "--ledger", csv, "--out", sheet),
            List.of("stock", "tag", STOCK, "--lot", "007", "--ledger", html, "--out", html),
            List.of("stock", "cover", STOCK, "--ledger", svg, "--picture", svg),
            List.of("advise", ORDER, "--stock", STOCK, "--ledger", html, "--card", html),
            List.of("stock", "label", "--data", shop, "--from", labels, "--picture", labels))) {
      CliRun run = CliRun.of(words.toArray(String[]::new));
      assertEquals(2, run.code(), words.toString());
      assertTrue(run.err().contains("would be overwritten"), run.err());
    }
    assertTrue(Files.readString(Path.of(csv)).startsWith("A1\t"));
  }

  @Test
  void two_outputs_of_one_call_are_never_the_same_file() throws IOException {
    Path one = folder.resolve("one");
    Path turned = folder.resolve("sub").resolve("..").resolve("one");
    Files.createDirectory(folder.resolve("sub"));
    Path link = Files.createSymbolicLink(folder.resolve("there"), folder).resolve("one");
    for (Path other : List.of(one, turned, link)) {
      for (String first : List.of("--ics", "--picture")) {
        CliRun run =
            CliRun.of(
                "promise", ORDER, "--shop", SHOP, first, one.toString(), "--tag", other.toString());
        assertEquals(2, run.code(), run.out() + run.err());
        assertTrue(run.err().contains(" is also what " + first + " writes"), run.err());
        assertTrue(run.out().isEmpty(), run.out());
        assertFalse(Files.exists(one));
      }
    }
    CliRun apart =
        CliRun.of(
            "promise", ORDER, "--shop", SHOP, "--tag", one.toString(), "--picture", one + "2");
    assertTrue(apart.code() < 2, apart.err());
    assertTrue(Files.exists(one) && Files.exists(folder.resolve("one2")));
  }

  @Test
  void outputs_that_are_no_files_may_be_the_same() {
    CliRun run =
        CliRun.of("promise", ORDER, "--shop", SHOP, "--tag", "/dev/null", "--picture", "/dev/null");
    assertTrue(run.code() < 2, run.err());
  }

  @Test
  void a_labels_picture_is_held_to_its_table_before_the_table_is_written() throws IOException {
    List<String> label = Files.readAllLines(Path.of("demo-data/stock-labels.csv")).subList(0, 2);
    String labels = Files.write(folder.resolve("labels.csv"), label).toString();
    Path work = Files.writeString(folder.resolve("work.txt"), "my work");
    Path shop = folder.resolve("shop");
    Path table = shop.resolve("compounds.json");
    for (Path picture : List.of(work, table)) {
      CliRun run =
          CliRun.of(
              "stock",
              "label",
              "--data",
              shop.toString(),
              "--from",
              labels,
              "--picture",
              picture.toString());
      assertEquals(2, run.code(), run.out());
      assertTrue(run.err().contains(picture.toString()), run.err());
      assertFalse(Files.exists(table), picture.toString());
    }
  }

  @Test
  void the_same_picture_may_be_made_again() {
    String file = folder.resolve("zones.svg").toString();
    assertEquals(0, CliRun.of("fit", "35 H7", "--picture", file).code());
    assertEquals(0, CliRun.of("fit", "35 H7", "--picture", file).code());
  }

  @Test
  void classes_of_a_shop_are_not_lost_to_what_is_learned() throws IOException {
    Path own = folder.resolve("compounds.json");
    Files.writeString(own, "my work");
    refused(own, "learn", "demo-data/observations.csv", "--out", folder.toString());
    Files.delete(own);
    for (int i = 0; i < 2; i++) {
      CliRun run = CliRun.of("learn", "demo-data/observations.csv", "--out", folder.toString());
      assertEquals(0, run.code(), run.err());
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"NaN", "Infinity", "-273.16", "1e3", "warm", "", "70"})
  void a_temperature_nobody_measures_at_is_refused(String celsius) {
    CliRun run = CliRun.of("fit", "35 H7", "--bore", "35.01", "--measured-at=" + celsius);
    assertEquals(2, run.code(), run.out());
    assertTrue(run.err().contains("--measured-at"), run.err());
  }

  /** A list that never ends is broken off as by Ctrl-C: the old result stays, and nothing else. */
  @Test
  void an_answer_that_is_broken_off_leaves_nothing_of_itself() throws Exception {
    Path results = Files.writeString(folder.resolve("results.csv"), "my work");
    Path part = folder.resolve("results.csv.part");
    ProcessBuilder call =
        new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-cp",
            System.getProperty("java.class.path"),
            "annulus.cli.Main",
            "advise",
            "--batch",
            "/dev/stdin",
            "--out",
            results.toString());
    Process process = call.redirectErrorStream(true).start();
    try {
      for (int i = 0; i < 600 && !Files.exists(part) && process.isAlive(); i++) {
        Thread.sleep(100);
      }
      assertTrue(Files.exists(part), "it has begun to write");
      process.destroy();
      process.waitFor();
    } finally {
      process.destroyForcibly();
    }
    assertFalse(Files.exists(part));
    assertEquals("my work", Files.readString(results));
  }
}
