package annulus.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The command line: what is printed where, and what the exit code says. */
class CliTest {
  private static final String GOOD = "demo-data/orders/01-good-fit.json";
  private static final String LOOSE = "demo-data/orders/03-too-loose.json";

  @TempDir Path folder;

  private static String[] words(String line) {
    return line.split(" ");
  }

  private static String[] caliper() {
    return words(
        "advise --bore 35.04 --part 35.00 --engagement 11"
            + " --materials steel-plain,aluminium-6061 --temp 18 --instrument caliper-150");
  }

  private static String[] plus(String[] words, String... more) {
    return Stream.concat(Stream.of(words), Stream.of(more)).toArray(String[]::new);
  }

  // exit codes

  @Test
  void a_press_fit_sets_its_pressure_against_what_the_members_bear_of_it() {
    String[] order = {
      "advise",
      "--bore",
      "41.990",
      "--part",
      "42.010",
      "--engagement",
      "20",
      "--finish",
      "ground,ground",
      "--instrument",
      "bore-gauge-dial,outside-micrometer",
      "--temp",
      "20",
      "--bore-outside",
      "80",
      "--part-inside",
      "20",
      "--materials",
      ""
    };
    order[order.length - 1] = "steel-plain,steel-bearing";
    String plain = CliRun.of(order).out();
    assertTrue(plain.contains("pressure up to 46 MPa; the outer member bears 88 MPa"), plain);
    assertTrue(plain.contains("hoop stress at the bore, at the most: 81 MPa\n"), plain);
    assertFalse(plain.contains("reaches a member's limit at"), plain);
    order[order.length - 1] = "steel-bearing,steel-plain";
    String loose = CliRun.of(order).out();
    assertFalse(loose.contains("no interference is left at"), loose);
  }

  @Test
  void an_answer_is_zero_and_says_nothing_on_the_error_stream() {
    CliRun run = CliRun.of("advise", GOOD);
    assertEquals(0, run.code());
    assertEquals("", run.err());
    assertTrue(run.out().startsWith("USE  "), run.out());
  }

  @Test
  void an_answer_that_is_no_is_one() {
    CliRun run = CliRun.of("advise", LOOSE);
    assertEquals(1, run.code());
    assertEquals("", run.err());
    assertTrue(run.out().startsWith("DO NOT BOND"), run.out());
  }

  @Test
  void bad_input_is_two_and_prints_no_answer() throws IOException {
    Path file = folder.resolve("order.json");
    Files.writeString(file, Files.readString(Path.of(GOOD)).replace("18,", "68,"));
    CliRun run = CliRun.of("advise", file.toString());
    assertEquals(2, run.code());
    assertEquals("", run.out());
    assertTrue(run.err().startsWith(file + ":69:19: temperatureC: 68 °C is"), run.err());
    assertTrue(run.err().contains("; allowed: -20 to 50 °C; if it is °F"), run.err());
    assertEquals(1, run.err().lines().count());
  }

  @Test
  void a_fault_of_its_own_is_three_and_gives_no_answer() {
    Clock broken =
        new Clock() {
          @Override
          public java.time.ZoneId getZone() {
            return ZoneOffset.UTC;
          }

          @Override
          public Clock withZone(java.time.ZoneId zone) {
            return this;
          }

          @Override
          public Instant instant() {
            throw new IllegalStateException("the clock stands still");
          }
        };
    CliRun run = CliRun.of(new Surround(broken, ZoneOffset.UTC), "advise", GOOD);
    assertEquals(3, run.code());
    assertEquals("", run.out());
    assertTrue(run.err().startsWith("annulus made a mistake of its own"), run.err());
    assertTrue(run.err().contains("the clock stands still"), run.err());
  }

  // commands and options

  @ParameterizedTest
  @ValueSource(strings = {"help", "--help", "advise --help", "advise --bore 3 --help"})
  void help_is_an_answer(String line) {
    CliRun run = CliRun.of(words(line));
    assertEquals(0, run.code());
    assertTrue(run.out().contains("advise ORDER.json"));
    assertTrue(run.out().contains("--data DIR"));
    assertEquals("", run.err());
  }

  /** A table of commands would load all their classes at a start, so that two lists stand. */
  @Test
  void every_command_in_the_help_is_one_and_is_named_where_a_word_is_none() {
    Set<String> helped =
        Pattern.compile("annulus\\.jar ([a-z]+)")
            .matcher(CliRun.of("help").out())
            .results()
            .map(m -> m.group(1))
            .collect(Collectors.toSet());
    String refused = CliRun.of("qqqqqqqqqqqqqqqq").err().strip();
    String allowed = refused.substring(refused.indexOf("allowed: ") + "allowed: ".length());
    assertEquals(helped, Set.of(allowed.split(", ")));
    for (String command : helped) {
      CliRun run = CliRun.of(command, "--not-an-option");
      assertEquals(2, run.code(), command);
      assertFalse(run.err().contains("is not a command"), run.err());
    }
  }

  @Test
  void no_words_at_all_print_the_help_and_are_bad_input() {
    CliRun run = CliRun.of();
    assertEquals(2, run.code());
    assertTrue(run.out().contains("advise ORDER.json"));
  }

  @ParameterizedTest
  @CsvSource({
    "advice, command line:1: advice: is not a command; allowed: did you mean advise?",
    "advise --jason, --jason: is not an option of advise; allowed: did you mean --json?",
    "advise --materal a, did you mean --materials?",
    "advise --temp, --temp: has no value; allowed: a value after it",
    "advise --temp --json, --temp: has no value",
    "advise --json --json, --json: stands twice; allowed: each option once",
    "advise --bore 1 --bore=2, --bore: stands twice",
    "advise -why, -why: is not an option of advise; allowed: did you mean --why?",
    "advise, no order given; allowed: ORDER.json or --bore",
    "advise a.json b.json, b.json: stands beside a.json",
    "advise a.json --bore 3, --bore: stands beside a.json; allowed: one order file",
    "advise --batch a.csv, --out: is missing",
    "advise --out a.csv, --batch: is missing",
    "advise --batch a.csv --out b.csv --why, --why: stands beside --batch",
    "advise --batch a.csv --out b.csv --bore 3, --bore: stands beside --batch",
    "advise --batch a.csv --out b.csv c.json, c.json: stands beside --batch",
    "advise --data nowhere --bore 3, nowhere: --data: is not a folder",
  })
  void words_that_do_not_fit_are_told_what_would(String line, String said) {
    CliRun run = CliRun.of(words(line));
    assertEquals(2, run.code(), run.toString());
    assertEquals("", run.out());
    assertTrue(run.err().contains(said), run.err());
    assertEquals(1, run.err().lines().count(), run.err());
  }

  // files

  @Test
  void a_file_that_is_not_there_is_named() {
    CliRun run = CliRun.of("advise", "nowhere/order.json");
    assertEquals(2, run.code());
    assertEquals(
        "nowhere/order.json: no such file; allowed: the name of a file that is there\n", run.err());
  }

  @Test
  void a_folder_is_no_order() {
    CliRun run = CliRun.of("advise", folder.toString());
    assertEquals(2, run.code());
    assertTrue(run.err().startsWith(folder + ": is a folder"), run.err());
    CliRun batch = CliRun.of("advise", "--batch", folder.toString(), "--out", "r.csv");
    assertTrue(batch.err().startsWith(folder + ": is a folder"), batch.err());
  }

  @Test
  void a_file_name_no_system_has_is_bad_input() {
    CliRun run = CliRun.of("advise", "a\0b");
    assertEquals(2, run.code());
    assertTrue(run.err().contains("file name"), run.err());
  }

  @Test
  void a_file_inside_a_file_is_bad_input() {
    CliRun run = CliRun.of("advise", GOOD + "/x.json");
    assertEquals(2, run.code());
    assertTrue(run.err().startsWith(GOOD + "/x.json: "), run.err());
  }

  @ParameterizedTest
  @CsvSource({"--card, card.html", "--out, results.csv"})
  void a_file_to_write_needs_its_folder(String option, String name) {
    String file = folder.resolve("nowhere").resolve(name).toString();
    CliRun run =
        option.equals("--card")
            ? CliRun.of("advise", GOOD, option, file)
            : CliRun.of("advise", "--batch", "demo-data/jobs.csv", option, file);
    assertEquals(2, run.code());
    assertEquals("", run.out());
    assertTrue(run.err().contains(option + ": " + file + " can't be written"), run.err());
  }

  @Test
  void what_is_read_is_never_overwritten() throws IOException {
    Path order = Files.copy(Path.of(GOOD), folder.resolve("o.json"));
    CliRun run =
        CliRun.of(
            "advise",
            order.toString(),
            "--card",
            folder + "/../" + folder.getFileName() + "/o.json");
    assertEquals(2, run.code());
    assertTrue(run.err().contains("would be overwritten"), run.err());
    assertEquals(Files.readString(Path.of(GOOD)), Files.readString(order));
    Path jobs = Files.copy(Path.of("demo-data/jobs.csv"), folder.resolve("j.csv"));
    CliRun batch = CliRun.of("advise", "--batch", jobs.toString(), "--out", jobs.toString());
    assertEquals(2, batch.code());
    assertEquals(Files.readString(Path.of("demo-data/jobs.csv")), Files.readString(jobs));
  }

  // a few words instead of a file

  @Test
  void a_few_words_are_an_order_and_show_what_they_leave_out() {
    CliRun run = CliRun.of(plus(caliper(), "--finish", "as-machined,anodised"));
    assertEquals(1, run.code(), run.err());
    assertTrue(run.out().startsWith("MEASURE AGAIN"), run.out());
    assertTrue(run.out().contains("Assumed: serviceLowC = -20"), run.out());
    assertTrue(run.out().contains("Assumed: start = 2027-03-11T09:30Z (now)"), run.out());
  }

  @Test
  void words_and_file_give_the_same_answer() {
    CliRun words =
        CliRun.of(
            plus(
                words(
                    "advise --engagement 25 --materials stainless-316,stainless-304 --finish"
                        + " as-machined --instrument bore-gauge-dial,outside-micrometer --state"
                        + " clean --temp 11 --consequence stranding --start 2027-03-11T11:00"
                        + " --zone Europe/Vienna --job HL-106 --bore"),
                "30.058 30.060 30.057",
                "--part",
                "29.998 29.999",
                "--title",
                "Stainless bush in stainless bracket of the tide gauge"));
    CliRun file = CliRun.of("advise", "demo-data/orders/06-stainless.json");
    assertEquals(file, words);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "--bore=34.5 --part=35|--bore: stands twice",
        "--temp=68|--temp: stands twice",
      })
  void an_option_given_again_is_a_slip(String more, String said) {
    CliRun run = CliRun.of(plus(caliper(), words(more)));
    assertTrue(run.err().contains(said), run.err());
  }

  private static Stream<List<String>> slips() {
    return Stream.of(
        List.of("--bore", "35,04", "--bore: \"35,04\" has a decimal comma; allowed: a decimal po"),
        List.of("--bore", "3504", "--bore: 3504 mm is out of range"),
        List.of("--bore", "1.3795", "differ by the factor 25.4"),
        List.of("--bore", "1379.5", "inch? 35.039 mm"),
        List.of("--bore", "34.0", "bore and part swapped?"),
        List.of("--bore", "37.1", "radial gap of 1050 µm"),
        List.of("--temp", "68", "--temp: 68 °C is out of range"),
        List.of("--materials", "steel,aluminium-6061", "--materials: \"steel\" is unknown"),
        List.of("--materials", "a,b,c", "--materials: 3 values"),
        List.of("--instrument", "outside-micrometer", "--instrument: outside-micrometer can't"),
        List.of("--engagement", "0", "--engagement: 0 mm is out of range"));
  }

  @ParameterizedTest
  @MethodSource("slips")
  void a_slip_in_the_words_names_the_option(List<String> slip) {
    String[] words = caliper();
    int at = List.of(words).indexOf(slip.get(0));
    words[at + 1] = slip.get(1);
    CliRun run = CliRun.of(words);
    assertEquals(2, run.code(), run.toString());
    assertTrue(run.err().contains(slip.get(2)), run.err());
    assertTrue(run.err().startsWith("command line:" + (at + 2) + ": "), run.err());
  }

  @Test
  void what_is_missing_in_the_words_names_the_option() {
    CliRun run = CliRun.of(words("advise --bore 35.04 --materials steel-plain"));
    assertTrue(run.err().contains("--part: is missing"), run.err());
    assertTrue(run.err().contains("--engagement: is missing"), run.err());
  }

  @Test
  void a_move_after_the_grab_is_strip_and_redo() {
    CliRun run =
        CliRun.of(
            words(
                "advise --bore 30.06 --part 30.00 --engagement 20 --materials steel-plain"
                    + " --instrument bore-micrometer-three-point,outside-micrometer --temp 22"
                    + " --start 2027-03-11T09:00Z --moved-at 2027-03-11T09:40Z"));
    assertEquals(1, run.code(), run.toString());
    assertTrue(run.out().startsWith("STRIP AND REDO"), run.out());
  }

  // the answer

  @ParameterizedTest
  @MethodSource("demoOrders")
  void the_same_input_gives_the_same_bytes(String order) {
    assertEquals(CliRun.of("advise", order, "--why"), CliRun.of("advise", order, "--why"));
    assertEquals(CliRun.of("advise", order, "--json"), CliRun.of("advise", order, "--json"));
  }

  static Stream<String> demoOrders() throws IOException {
    try (Stream<Path> files = Files.list(Path.of("demo-data/orders"))) {
      return files.map(Path::toString).sorted().toList().stream();
    }
  }

  @ParameterizedTest
  @MethodSource("demoOrders")
  void the_sections_come_in_the_order_that_a_mechanic_needs(String order) {
    List<String> lines = CliRun.of("advise", order).out().lines().toList();
    assertTrue(lines.get(0).matches("[A-Z ]+  .+"), lines.get(0));
    int last = 0;
    for (String head :
        List.of("Earliest safe hand-back: ", "Gap  ", "Cure", "Steps", "Cautions", "Classes")) {
      int at = first(lines, head);
      assertTrue(at > last, head + " at " + at + " after " + last);
      last = at;
    }
    assertTrue(lines.get(lines.size() - 1).startsWith("Data version "));
    assertTrue(lines.get(first(lines, "Gap  ")).matches("Gap +radial .+ diametral .+"));
  }

  private static int first(List<String> lines, String start) {
    for (int i = 0; i < lines.size(); i++) {
      if (lines.get(i).startsWith(start)) {
        return i;
      }
    }
    return -1;
  }

  @Test
  void json_follows_its_schema_and_agrees_with_the_text() throws IOException {
    Schema schema =
        SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
            .getSchema(
                Files.readString(Path.of("data/schema/advice.schema.json")), InputFormat.JSON);
    for (String order : demoOrders().toList()) {
      CliRun run = CliRun.of("advise", order, "--json");
      assertEquals(List.of(), schema.validate(run.out(), InputFormat.JSON), order);
      JsonNode json = new ObjectMapper().readTree(run.out());
      CliRun text = CliRun.of("advise", order);
      assertEquals(text.code(), run.code(), order);
      assertTrue(text.out().endsWith("Data version " + json.get("dataVersion").asText() + "\n"));
    }
  }

  @Test
  void the_card_is_written_beside_the_answer() throws IOException {
    Path card = folder.resolve("card.html");
    CliRun run = CliRun.of("advise", GOOD, "--card", card.toString());
    assertEquals(0, run.code());
    assertEquals("card written to " + card + "\n", run.err());
    assertEquals(CliRun.of("advise", GOOD).out(), run.out());
    String html = Files.readString(card);
    assertTrue(html.startsWith("<!DOCTYPE html>") && html.contains("<svg"), html);
  }

  @Test
  void why_adds_reasons_and_takes_nothing_away() {
    List<String> why = CliRun.of("advise", GOOD, "--why").out().lines().toList();
    List<String> plain = CliRun.of("advise", GOOD).out().lines().toList();
    assertTrue(why.size() > plain.size() + 30);
    assertTrue(why.containsAll(plain));
  }

  @Test
  void a_start_that_is_not_said_is_now() {
    Clock later = Clock.fixed(Instant.parse("2027-03-12T09:30:00Z"), ZoneOffset.UTC);
    String[] order =
        words(
            "advise --bore 30.06 --part 30.00 --engagement 20 --materials steel-plain"
                + " --instrument bore-micrometer-three-point,outside-micrometer --temp 22");
    CliRun today = CliRun.of(order);
    CliRun tomorrow = CliRun.of(new Surround(later, ZoneOffset.UTC), order);
    assertTrue(today.out().contains("closing at Thu 2027-03-11 09:30 (+00:00), Europe/Dublin"));
    assertTrue(tomorrow.out().contains("closing at Fri 2027-03-12 09:30"));
    String[] fixed = plus(order, "--start", "2027-03-11T09:30Z", "--zone", "Europe/Dublin");
    CliRun said = CliRun.of(new Surround(later, ZoneOffset.UTC), fixed);
    assertEquals(
        today.out().replaceAll("Assumed: (start|zone) .*\n", ""),
        said.out(),
        "only start and zone are assumed");
  }

  // a shop's own tables

  @Test
  void a_shop_table_changes_the_answer_and_the_data_version() throws IOException {
    String policy = Files.readString(Path.of("data/policy.csv"));
    String changed =
        policy.replace("undisturbed-after-fixture-min,15", "undisturbed-after-fixture-min,45");
    assertNotEquals(policy, changed);
    Files.writeString(folder.resolve("policy.csv"), changed);
    CliRun own = CliRun.of("advise", GOOD, "--data", folder.toString());
    CliRun plain = CliRun.of("advise", GOOD);
    assertEquals(0, own.code(), own.err());
    String step = "Do not touch or turn it until Thu 2027-03-11 ";
    assertTrue(plain.out().contains(step + "16:48"), plain.out());
    assertTrue(own.out().contains(step + "17:18"), own.out());
    assertNotEquals(last(plain), last(own));
  }

  private static String last(CliRun run) {
    List<String> lines = run.out().lines().toList();
    return lines.get(lines.size() - 1);
  }

  @Test
  void a_broken_shop_table_is_refused_at_its_cell() throws IOException {
    String policy = Files.readString(Path.of("data/policy.csv"));
    Path file = folder.resolve("policy.csv");
    Files.writeString(file, policy.replace("wanted-confidence,0.95", "wanted-confidence,sure"));
    CliRun run = CliRun.of("advise", GOOD, "--data", folder.toString());
    assertEquals(2, run.code());
    assertEquals("", run.out());
    assertTrue(run.err().startsWith(file + ":4:2: value: "), run.err());
  }

  @Test
  void the_fault_of_a_broken_shop_table_never_costs_a_written_file() throws IOException {
    Files.writeString(folder.resolve("rules.json"), "{");
    Path out = Files.writeString(folder.resolve("results.csv"), "kept");
    CliRun run =
        CliRun.of(
            "advise",
            "--batch",
            "demo-data/jobs.csv",
            "--out",
            out.toString(),
            "--data",
            folder.toString());
    assertEquals(2, run.code());
    assertEquals("kept", Files.readString(out));
  }

  @ParameterizedTest
  @ValueSource(strings = {"J\uFFFD\uFFFDrg", "\uFFFD1"})
  void a_word_whose_letters_the_shell_lost_is_refused_before_anything_is_written(String lost) {
    Path ledger = folder.resolve("ledger");
    CliRun move =
        CliRun.of(
            "stock",
            "receive",
            "--ledger",
            ledger.toString(),
            "--from",
            "demo-data/stock.csv",
            "--who",
            lost);
    assertEquals(2, move.code());
    assertTrue(move.err().startsWith("command line:8: " + lost + ": letters"), move.err());
    assertTrue(move.err().contains("LC_ALL=C.UTF-8"), move.err());
    assertFalse(Files.exists(ledger));
    for (String words : List.of("advise " + lost, "advise --job=" + lost, lost, "help " + lost)) {
      CliRun run = CliRun.of(words.split(" "));
      assertEquals(2, run.code(), words);
      assertTrue(run.err().contains("the shell is not UTF-8"), run.err());
    }
  }

  @Test
  void a_flag_with_a_value_is_told_that_it_takes_none() {
    CliRun run = CliRun.of("advise", GOOD, "--why=yes");
    assertEquals(2, run.code());
    assertEquals(
        "command line:3: --why: takes no value; allowed: --why alone, or not at all\n", run.err());
  }

  @ParameterizedTest
  @ValueSource(strings = {"help", "--help", "-h", "advise -h", "stock --help"})
  void help_is_given_by_each_of_its_names(String words) {
    CliRun run = CliRun.of(words.split(" "));
    assertEquals(0, run.code());
    assertTrue(run.out().startsWith("annulus: fit a part in a bore"), run.out());
  }

  @Test
  void an_unknown_command_is_offered_all_there_are_and_the_version_is_said() {
    assertTrue(CliRun.of("zzzzzzzz").err().contains("restore, help"), "help is one of them");
    assertTrue(CliRun.of("hepl").err().contains("did you mean help"));
    CliRun version = CliRun.of("--version");
    assertEquals(0, version.code());
    assertTrue(version.out().matches("annulus [^ ].*\\R"), version.out());
  }

  @Test
  void faces_of_a_primer_that_is_not_named_are_one_problem() {
    CliRun run = CliRun.of(plus(caliper(), "--primer-on", "bore"));
    assertEquals(2, run.code());
    assertEquals(1, run.err().lines().count(), run.err());
    assertTrue(run.err().contains("--primer: is missing"), run.err());
  }

  @ParameterizedTest
  @ValueSource(strings = {"NaN", "-Infinity", "+1", ".5", "01", "// x", "# x", "'x'", "x", "[1,]"})
  void what_is_no_json_is_told_without_the_inside_of_a_library(String value) throws IOException {
    Path order = folder.resolve("order.json");
    Files.writeString(order, "{\"format\": " + value + "\n}");
    String said = CliRun.of("advise", order.toString()).err();
    assertTrue(said.contains("is not well-formed JSON: "), said);
    assertTrue(said.contains("; allowed: JSON (RFC 8259)"), said);
    for (String inside : List.of("Feature", "enable", "ALLOW", "parser", "`")) {
      assertFalse(said.contains(inside), said);
    }
  }
}
