package annulus.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import biweekly.Biweekly;
import biweekly.ICalVersion;
import biweekly.ICalendar;
import biweekly.component.VEvent;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.xml.sax.InputSource;

class PromiseCommandTest {
  private static final String SHOP = "demo-data/shop.json";
  private static final String GOOD = "demo-data/orders/01-good-fit.json";
  private static final String NOW = "2027-03-11T10:00";

  @TempDir private Path folder;

  /** What a run said. */
  private record Run(int code, String out, String err) {}

  private static Run run(String... args) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Surround surround =
        new Surround(
            Clock.fixed(Instant.parse("2027-03-11T09:00:00Z"), ZoneId.of("UTC")),
            ZoneId.of("Europe/Vienna"));
    int code =
        new Cli(
                surround,
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8))
            .run(args);
    return new Run(
        code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }

  private static Run promise(String order, String... more) {
    List<String> args = new ArrayList<>(List.of("promise", order, "--shop", SHOP, "--now", NOW));
    args.addAll(List.of(more));
    return run(args.toArray(String[]::new));
  }

  private String changed(String from, String to) throws IOException {
    Path file = folder.resolve("order.json");
    String text = Files.readString(Path.of(GOOD));
    assertTrue(text.contains(from), from);
    Files.writeString(file, text.replace(from, to));
    return file.toString();
  }

  @Test
  void the_customer_reads_the_promise_and_nothing_earlier() {
    Run run = promise(GOOD);
    assertEquals(0, run.code(), run.err());
    String line = run.out().lines().filter(l -> l.startsWith("Customer")).findFirst().orElseThrow();
    assertEquals("Customer   Ready on Tuesday 16 March 2027, 09:15.", line);
    assertTrue(run.out().contains("PROMISE    Tue 2027-03-16 09:15"));
    assertTrue(run.out().contains("Earliest   Tue 2027-03-16 06:10"));
    assertTrue(run.out().contains("common practice, no source (confidence low)"));
  }

  @Test
  void no_line_is_wider_than_a_terminal_and_two_runs_say_the_same() {
    Run run = promise(GOOD, "--wanted", "2027-03-16T17:30");
    assertTrue(run.out().lines().allMatch(l -> l.codePointCount(0, l.length()) <= 100), run.out());
    assertEquals(run.out(), promise(GOOD, "--wanted", "2027-03-16T17:30").out());
  }

  @Test
  void exit_code_1_when_the_wanted_time_can_t_be_met_or_nothing_is_promised() throws IOException {
    assertEquals(0, promise(GOOD, "--wanted", "2027-03-16T17:30").code());
    Run late = promise(GOOD, "--wanted", "2027-03-11T18:00");
    assertEquals(1, late.code());
    assertTrue(late.out().contains("can't be met by any way"), late.out());
    Run cold = promise(changed("\"temperatureC\": 18", "\"temperatureC\": 3"));
    assertEquals(1, cold.code());
    assertTrue(cold.out().contains("It will not cure here"), cold.out());
    assertFalse(cold.out().contains("Customer"), cold.out());
  }

  @Test
  void bad_words_are_told_with_exit_code_2() {
    assertEquals(2, run("promise", GOOD).code());
    assertEquals(2, run("promise", GOOD, "--shop", "nowhere.json").code());
    assertEquals(2, promise(GOOD, "--wanted", "Friday").code());
    assertEquals(2, promise(GOOD, "--log", "nowhere.csv").code());
    assertTrue(promise(GOOD, "--wanted", "2027-03-28T02:30").err().contains("does not exist"));
    assertTrue(promise(GOOD, "--wanted", "2027-10-31T02:30").err().contains("happens twice"));
  }

  private static ICalendar parsed(Path file) throws IOException {
    ICalendar calendar = Biweekly.parse(Files.readString(file)).first();
    assertTrue(calendar.validate(ICalVersion.V2_0).isEmpty());
    return calendar;
  }

  @Test
  void calendar_entries_keep_their_identity_and_count_up_only_when_they_move() throws IOException {
    Path ics = folder.resolve("job.ics");
    promise(GOOD, "--ics", ics.toString());
    VEvent first = parsed(ics).getEvents().get(1);
    promise(GOOD, "--ics", ics.toString());
    VEvent same = parsed(ics).getEvents().get(1);
    promise(changed("\"temperatureC\": 18", "\"temperatureC\": 12"), "--ics", ics.toString());
    VEvent moved = parsed(ics).getEvents().get(1);
    assertEquals(0, first.getSequence().getValue());
    assertEquals(0, same.getSequence().getValue());
    assertEquals(1, moved.getSequence().getValue());
    assertEquals(first.getUid().getValue(), moved.getUid().getValue());
    assertNotEquals(first.getDateStart().getValue(), moved.getDateStart().getValue());
    assertEquals(
        Instant.parse("2027-03-16T08:15:00Z"), first.getDateStart().getValue().toInstant());
    assertFalse(Files.readString(ics).contains("Cargo"), "the title may name a customer");
    promise(changed("\"temperatureC\": 18", "\"temperatureC\": 3"), "--ics", ics.toString());
    VEvent gone = parsed(ics).getEvents().get(1);
    assertTrue(gone.getStatus().isCancelled());
    assertEquals(2, gone.getSequence().getValue());
    promise(GOOD, "--ics", ics.toString());
    assertEquals(3, parsed(ics).getEvents().get(1).getSequence().getValue());
  }

  @Test
  void a_job_that_shares_a_calendar_file_keeps_its_entries_and_its_count() throws IOException {
    Path ics = folder.resolve("both.ics");
    promise(changed("\"temperatureC\": 18", "\"temperatureC\": 12"), "--ics", ics.toString());
    promise(GOOD, "--ics", ics.toString());
    VEvent first = parsed(ics).getEvents().get(1);
    assertEquals(1, first.getSequence().getValue());
    Path other = folder.resolve("other.json");
    String text =
        Files.readString(Path.of(GOOD)).replaceFirst("\"job\": \"[^\"]*\"", "\"job\": \"B\"");
    Files.writeString(other, text);
    promise(other.toString(), "--ics", ics.toString());
    assertEquals(4, parsed(ics).getEvents().size());
    promise(changed("\"temperatureC\": 18", "\"temperatureC\": 12"), "--ics", ics.toString());
    VEvent again = parsed(ics).getEvents().get(1);
    assertEquals(4, parsed(ics).getEvents().size());
    assertEquals(first.getUid().getValue(), again.getUid().getValue());
    assertEquals(2, again.getSequence().getValue());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "BEGIN:VCALENDAR\r\nPRODID:-//somebody//EN\r\nBEGIN:VEVENT\r\nUID:1\r\nEND:VEVENT\r\n",
        "BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\nPRODID:-//annulus//hand-back//EN\r\nEND:VEVENT\r\n",
        "BEGIN:VCALENDAR\r\nPRODID:-//annulus//hand-back//EN\r\nBEGIN:VEVENT\r\nUID:1\r\n",
        "BEGIN:VCALENDAR\r\nPRODID:-//annulus//hand-back//EN\r\nEND:VEVENT\r\n",
        "BEGIN:VCALENDAR\r\n"
      })
  void no_calendar_of_another_is_written_over(String text) throws IOException {
    Path ics = folder.resolve("mine.ics");
    Files.writeString(ics, text);
    Run run = promise(GOOD, "--ics", ics.toString());
    assertEquals(2, run.code());
    assertEquals("", run.out(), "told before the answer");
    assertTrue(run.err().contains("mine.ics"), run.err());
    assertTrue(run.err().contains("a calendar file that this program wrote"), run.err());
    assertEquals(text, Files.readString(ics));
  }

  @Test
  void a_reference_too_long_for_the_tag_is_told_before_anything_is_done() throws IOException {
    Path order = folder.resolve("long.json");
    String reference = "R".repeat(35);
    String text =
        Files.readString(Path.of(GOOD))
            .replaceFirst("\"job\": \"[^\"]*\"", "\"job\": \"" + reference + "\"");
    Files.writeString(order, text);
    Path ics = folder.resolve("long.ics");
    Path tag = folder.resolve("long.html");
    Run run = promise(order.toString(), "--tag", tag.toString(), "--ics", ics.toString());
    assertEquals(2, run.code());
    assertEquals("", run.out());
    assertTrue(run.err().contains("long.json:"), run.err());
    assertTrue(
        run.err()
            .contains("job: 35 characters do not fit on a tag; allowed: at most 30 characters"),
        run.err());
    assertFalse(Files.exists(ics));
    assertEquals(0, promise(order.toString(), "--ics", ics.toString()).code());
  }

  @Test
  void the_tag_says_the_promise_and_no_earlier_time() throws IOException {
    Path tag = folder.resolve("tag.html");
    promise(GOOD, "--tag", tag.toString());
    String html = Files.readString(tag);
    assertTrue(html.contains("DO NOT USE BEFORE"));
    assertTrue(html.contains("Tuesday") && html.contains("09:15"), html);
    assertFalse(html.contains("07:00"));
  }

  /** Ready on a Friday, fully cured days later: what is not allowed until then is said with it. */
  private String limited() throws IOException {
    Path file = folder.resolve("limited.json");
    String text = Files.readString(Path.of(GOOD));
    assertTrue(text.contains("\"consequence\": \"injury\""), text);
    Files.writeString(
        file, text.replace("\"consequence\": \"injury\"", "\"consequence\": \"nuisance\""));
    return file.toString();
  }

  @Test
  void limited_use_until_full_cure_is_told_wherever_the_time_is() throws Exception {
    String order = limited();
    Path tag = folder.resolve("tag.html");
    Path ics = folder.resolve("job.ics");
    Run run = promise(order, "--tag", tag.toString(), "--ics", ics.toString());
    assertEquals(0, run.code(), run.err());
    String out = run.out().replaceAll("\\s+", " ");
    JsonNode json = new ObjectMapper().readTree(promise(order, "--json").out());
    String limit = json.at("/limitedUse/text").asText();
    assertTrue(
        limit.matches("Limited use until [A-Z].* March 2027, ..:..: no full load, .*\\."), limit);
    assertTrue(json.get("customer").asText().endsWith(". " + limit), json.toString());
    assertTrue(
        json.at("/promise").asText().compareTo(json.at("/limitedUse/until").asText()) < 0,
        json.toString());
    assertTrue(out.contains("Then " + limit + " What "), out);
    assertTrue(out.endsWith(". " + limit + " "), out);
    assertTrue(Files.readString(tag).contains("<p class=\"limited\">" + limit + "</p>"));
    VEvent ready = parsed(ics).getEvents().get(1);
    assertTrue(ready.getSummary().getValue().startsWith("Ready"), ready.toString());
    assertEquals(limit, ready.getDescription().getValue());
  }

  @Test
  void a_limit_that_is_over_when_the_joint_is_taken_is_not_told() throws IOException {
    JsonNode json = new ObjectMapper().readTree(promise(GOOD, "--json").out());
    assertTrue(json.has("limitedUse") && json.get("limitedUse").isNull(), json.toString());
    assertFalse(promise(GOOD).out().contains("Limited use"));
  }

  /** The inert pair with the primer left open instead of ruled out. */
  private String planned() throws IOException {
    Path file = folder.resolve("planned.json");
    String text = Files.readString(Path.of("demo-data/orders/05-inert-pair.json"));
    assertTrue(text.contains("\"primer\": \"none\""), text);
    Files.writeString(file, text.replace("\"primer\": \"none\"", "\"primer\": null"));
    return file.toString();
  }

  @Test
  void a_planned_primer_is_told_as_not_counted_and_as_what_would_move_the_time()
      throws IOException {
    Run run = promise(planned());
    String out = run.out().replaceAll("\\s+", " ");
    assertTrue(
        out.contains(
            "Primer The primer is not counted in this time. When it is on, enter it and ask again:"
                + " about "),
        out);
    assertTrue(out.contains("primer, once it is entered: "), out);
    assertFalse(promise(GOOD).out().contains("not counted"));
  }

  @Test
  void the_picture_is_well_formed_and_marks_what_matters() throws Exception {
    Path svg = folder.resolve("cure.svg");
    promise(GOOD, "--picture", svg.toString());
    String text = Files.readString(svg);
    var root =
        DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .parse(new InputSource(new StringReader(text)))
            .getDocumentElement();
    assertEquals("svg", root.getTagName());
    for (String word : List.of("fixture", "hand-back", "promise")) {
      assertTrue(text.contains(">" + word + " "), word);
    }
    promise(GOOD, "--picture", svg.toString());
    assertEquals(text, Files.readString(svg));
  }

  @Test
  void json_follows_its_schema_in_every_case() throws IOException {
    var schema =
        SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
            .getSchema(
                Files.readString(Path.of("data/schema/promise.schema.json")), InputFormat.JSON);
    List<Run> runs =
        List.of(
            promise(GOOD, "--json"),
            promise(GOOD, "--json", "--wanted", "2027-03-16T17:30"),
            promise("demo-data/orders/03-too-loose.json", "--json", "--options"),
            promise("demo-data/orders/10-interference.json", "--json", "--options"),
            running("--json"));
    for (Run run : runs) {
      assertEquals(List.of(), schema.validate(run.out(), InputFormat.JSON), run.out() + run.err());
    }
  }

  private Run running(String... more) throws IOException {
    String order = changed("\"start\": \"2027-03-11T15:30\"", "\"start\": \"2027-03-12T16:30\"");
    List<String> args =
        new ArrayList<>(
            List.of(
                "promise",
                order,
                "--shop",
                SHOP,
                "--now",
                "2027-03-13T08:10",
                "--log",
                "demo-data/loggers/gap-over-night.csv"));
    args.addAll(List.of(more));
    return run(args.toArray(String[]::new));
  }

  @Test
  void a_running_job_is_judged_by_its_log() throws IOException {
    Run run = running();
    assertEquals(0, run.code(), run.err());
    for (String word : List.of("Cured", "Ready", "Why", "Missing", "they may hide")) {
      assertTrue(run.out().replaceAll("\\s+", " ").contains(word), run.out());
    }
  }

  @Test
  void a_log_whose_days_can_t_be_told_is_asked_about() {
    Run run = promise(GOOD, "--log", "demo-data/malformed/loggers/day-and-month-open.csv");
    assertEquals(2, run.code());
    Run fine =
        run(
            "promise",
            GOOD,
            "--shop",
            SHOP,
            "--now",
            "2027-03-13T08:10",
            "--date-order",
            "sideways",
            "--log",
            "demo-data/loggers/plain.csv");
    assertEquals(2, fine.code());
    assertTrue(fine.err().contains("day-first or month-first"), fine.err());
  }

  @Test
  void the_day_s_list_puts_broken_promises_first_then_sorts_by_ready_time() throws IOException {
    Path list = folder.resolve("jobs.csv");
    String head =
        "job,bore_mm,part_mm,engagement_mm,bore_material,part_material,bore_instrument,"
            + "part_instrument,temperature_c,primer,consequence,start,promised\n";
    String same =
        ",25.062 25.064,25.004,20,steel-plain,bronze-phosphor,bore-micrometer-three-point,"
            + "outside-micrometer,";
    Files.writeString(
        list,
        head
            + "slow"
            + same
            + "16,none,injury,2027-03-11T09:00,\n"
            + "quick"
            + same
            + "20,primer-solvent,nuisance,2027-03-11T09:00,2027-03-20T10:00\n"
            + "broken"
            + same
            + "16,none,injury,2027-03-11T09:00,2027-03-12T10:00\n"
            + "cold"
            + same
            + "2,none,injury,2027-03-11T09:00,\n");
    Run run = run("promise", "--list", list.toString(), "--shop", SHOP, "--now", NOW);
    assertEquals(1, run.code(), run.err());
    List<String> jobs =
        run.out().lines().map(l -> l.split(" ")[0]).filter(w -> w.matches("[a-z]+")).toList();
    assertEquals(List.of("job", "broken", "quick", "slow", "cold"), jobs, run.out());
    assertTrue(run.out().contains("missing their promise: 1"));
  }

  private static final String LIST_HEAD =
      "job,bore_mm,part_mm,engagement_mm,bore_material,part_material,bore_instrument,"
          + "part_instrument,temperature_c,primer,consequence,start,promised\n";
  private static final String LIST_JOINT =
      ",25.062 25.064,25.004,20,steel-plain,bronze-phosphor,bore-micrometer-three-point,"
          + "outside-micrometer,";

  private Path list(String... rows) throws IOException {
    Path list = folder.resolve("jobs.csv");
    String joined =
        LIST_HEAD
            + List.of(rows).stream()
                .map(r -> r.replace("|", LIST_JOINT))
                .reduce("", (a, b) -> a + b + "\n");
    Files.writeString(list, joined);
    return list;
  }

  /** One temperature from the afternoon of the 12th to the morning of the 13th. */
  private String night(double celsius) throws IOException {
    return logged("2027-03-12T15:00:00Z", celsius);
  }

  /** One temperature for 16 hours. */
  private String logged(String from, double celsius) throws IOException {
    Path log = folder.resolve("night.csv");
    StringBuilder text = new StringBuilder("time,temperature C\n");
    for (int quarter = 0; quarter <= 64; quarter++) {
      text.append(Instant.parse(from).plusSeconds(quarter * 900L))
          .append(',')
          .append(celsius)
          .append('\n');
    }
    Files.writeString(log, text.toString());
    return log.toString();
  }

  private Run morning(Path list, String... more) {
    List<String> args =
        new ArrayList<>(List.of("promise", "--list", list.toString(), "--shop", SHOP, "--now"));
    args.add("2027-03-13T08:10");
    args.addAll(List.of(more));
    return run(args.toArray(String[]::new));
  }

  /**
   * "--log" beside "--list" used to be passed over: the list read as if the night had been warm.
   */
  @Test
  void after_a_cold_night_the_list_names_whom_to_call() throws IOException {
    Path list =
        list(
            "running|22,none,injury,2027-03-12T16:00,2027-03-16T17:30",
            "fresh|17,none,nuisance,2027-03-13T08:05,2027-03-20T10:00",
            "waits|17,none,nuisance,2027-03-15T16:30,2027-03-20T10:00");
    assertEquals(0, morning(list).code(), morning(list).out());
    Run cold = morning(list, "--log", night(2));
    assertEquals(1, cold.code(), cold.err());
    String running = cold.out().lines().filter(l -> l.startsWith("running")).findFirst().get();
    assertTrue(running.endsWith("MISSES"), cold.out());
    assertTrue(cold.out().contains("missing their promise: 1"), cold.out());
    assertTrue(cold.out().contains("Log        "), cold.out());
    for (String job : List.of("fresh", "waits")) {
      String line = cold.out().lines().filter(l -> l.startsWith(job)).findFirst().get();
      assertTrue(morning(list).out().contains(line), "it did not lie there that night: " + line);
    }
  }

  /** The logger may have lain in the warm cupboard and a job on the bench. */
  @Test
  void a_log_never_moves_a_whole_list_sooner() throws IOException {
    Path list = list("running|22,none,injury,2027-03-12T16:30,2027-03-16T17:30");
    String plain = morning(list).out().lines().filter(l -> l.startsWith("running")).toList() + "";
    String warm =
        morning(list, "--log", night(30))
                .out()
                .lines()
                .filter(l -> l.startsWith("running"))
                .toList()
            + "";
    assertEquals(plain, warm);
  }

  @Test
  void a_row_that_the_log_does_not_reach_is_refused_in_its_place() throws IOException {
    Path list = list("older|17,none,nuisance,2027-03-11T16:30,");
    Run run =
        run(
            "promise",
            "--list",
            list.toString(),
            "--shop",
            SHOP,
            "--now",
            "2027-03-12T10:00",
            "--log",
            "demo-data/loggers/plain.csv");
    assertEquals(2, run.code());
    assertTrue(run.err().contains("jobs.csv:2:"), run.err());
    assertTrue(run.err().contains("has no readings between"), run.err());
  }

  @Test
  void a_log_that_can_t_be_read_is_told_once_not_for_every_row() throws IOException {
    Path list =
        list("one|17,none,nuisance,2027-03-12T16:30,", "two|17,none,nuisance,2027-03-12T16:30,");
    Run run = morning(list, "--log", "demo-data/malformed/loggers/unit-open.csv");
    assertEquals(2, run.code());
    assertEquals("", run.out());
    assertEquals(1, run.err().lines().count(), run.err());
  }

  @Test
  void words_for_one_job_are_refused_beside_a_list_not_passed_over() throws IOException {
    Path list = list("running|17,none,nuisance,2027-03-12T16:30,");
    for (String flag : List.of("--json", "--options")) {
      Run run = morning(list, flag);
      assertEquals(2, run.code(), flag);
      assertTrue(run.err().contains(flag + ": does not go with --list"), run.err());
    }
    assertEquals(2, morning(list, "--wanted", "2027-03-16T10:00").code());
    assertEquals(2, morning(list, "--tag", folder.resolve("t.html").toString()).code());
    assertEquals(2, morning(list, GOOD).code());
  }

  @Test
  void cured_by_the_tables_but_not_safe_yet_is_never_told_as_full_cure_alone() throws IOException {
    Path list = list("slow|17,none,injury,2027-03-09T09:00,");
    Run run =
        run("promise", "--list", list.toString(), "--shop", SHOP, "--now", "2027-03-14T12:00");
    assertTrue(run.out().contains("slow        not safe yet "), run.out());
  }

  @Test
  void a_list_line_stays_one_line_across_the_clock_change() throws IOException {
    Path list = list("spring|17,none,injury,2027-03-26T09:00,2027-03-30T10:00");
    Run run =
        run("promise", "--list", list.toString(), "--shop", SHOP, "--now", "2027-03-26T12:00");
    String line = run.out().lines().filter(l -> l.startsWith("spring")).findFirst().get();
    assertTrue(line.endsWith("Tue 2027-03-30 10:00  MISSES"), run.out());
  }

  @Test
  void a_promise_that_has_passed_is_told_to_nobody() throws IOException {
    Run run = run("promise", GOOD, "--shop", SHOP, "--now", "2027-03-19T08:00");
    assertTrue(run.out().contains("it has passed: check the job now"), run.out());
    assertTrue(run.out().contains("Customer   Ready on Friday 19 March 2027, 09:15."), run.out());
    assertTrue(run.out().startsWith("Job "), run.out());
    assertTrue(run.out().contains("PROMISE    Fri"), run.out());
    String json = run("promise", GOOD, "--shop", SHOP, "--now", "2027-03-19T08:00", "--json").out();
    assertTrue(json.contains("Ready on Friday 19 March 2027, 09:15."), json);
    assertTrue(json.contains("\"promise\": \"2027-03-19T09:15"), json);
    Path list = list("old|20,primer-solvent,nuisance,2027-03-11T09:00,2027-03-13T10:00");
    Run all =
        run("promise", "--list", list.toString(), "--shop", SHOP, "--now", "2027-03-19T08:00");
    String line = all.out().lines().filter(l -> l.startsWith("old")).findFirst().get();
    assertTrue(line.endsWith("Fri 2027-03-19 09:15 Sat 2027-03-13 10:00  passed"), all.out());
  }

  @Test
  void a_wanted_time_at_which_nobody_can_come_says_so() {
    Run closed = promise(GOOD, "--wanted", "2027-03-17T10:00");
    assertTrue(
        closed.out().contains("The shop is closed at that time (Stocktaking)"), closed.out());
    Run passed = promise(GOOD, "--wanted", "2027-03-10T10:00");
    assertTrue(passed.out().contains("That time has passed already"), passed.out());
    Run open = promise(GOOD, "--wanted", "2027-03-16T17:30");
    assertFalse(open.out().contains("nobody can collect"), open.out());
  }

  @Test
  void other_ways_for_a_closed_joint_are_answered_not_passed_over() {
    Run run = run("promise", GOOD, "--shop", SHOP, "--now", "2027-03-12T10:00", "--options");
    assertTrue(run.out().contains("The joint is closed already"), run.out());
  }

  /** An hour lost or won by a zone left over in the file decided a hand-back without a word. */
  @Test
  void an_order_on_another_clock_than_the_shop_s_says_so() throws IOException {
    Run same = promise(GOOD);
    assertFalse(same.out().contains("! Clock"), same.out());
    Run other = promise(changed("Europe/Vienna", "Europe/Dublin"));
    String said = other.out().replaceAll("\\s+", " ");
    assertTrue(
        said.contains("Europe/Dublin, where its start is Thu 2027-03-11 15:30"), other.out());
    assertTrue(said.contains("at the shop that is Thu 2027-03-11 16:30"), other.out());
  }

  @Test
  void a_file_that_can_t_be_written_is_told_before_anything_is_answered_or_written()
      throws IOException {
    Path ics = folder.resolve("job.ics");
    Run run = promise(GOOD, "--ics", ics.toString(), "--tag", SHOP);
    assertEquals(2, run.code());
    assertEquals("", run.out());
    assertFalse(Files.exists(ics));
  }

  @Test
  void without_a_safe_time_no_tag_is_written_and_that_is_said() throws IOException {
    Path tag = folder.resolve("tag.html");
    promise(GOOD, "--tag", tag.toString());
    String before = Files.readString(tag);
    Run cold =
        promise(changed("\"temperatureC\": 18", "\"temperatureC\": 3"), "--tag", tag.toString());
    assertEquals(1, cold.code());
    assertTrue(cold.err().contains("Take an earlier tag off the part"), cold.err());
    assertEquals(before, Files.readString(tag));
  }

  @Test
  void a_log_from_the_future_is_refused_and_past_a_moment_named_it_is_warned_of()
      throws IOException {
    String list = list("running|22,none,injury,2027-03-10T16:00,").toString();
    String order = changed("\"start\": \"2027-03-11T15:30\"", "\"start\": \"2027-03-10T15:30\"");
    for (List<String> what : List.of(List.of(order), List.of("--list", list))) {
      List<String> args = new ArrayList<>(List.of("promise"));
      args.addAll(what);
      args.addAll(List.of("--shop", SHOP, "--log", logged("2027-03-10T17:06:00Z", 20)));
      Run refused = run(args.toArray(String[]::new));
      assertEquals(2, refused.code(), refused.out());
      assertTrue(refused.err().contains("the clock of the logger is wrong"), refused.err());
    }
    Run warned =
        run("promise", GOOD, "--shop", SHOP, "--now", "2027-03-13T07:54", "--log", night(20));
    assertEquals(0, warned.code(), warned.err());
    String said =
        "unless it was read out later, its readings run to Sat 2027-03-13 08:00, past now";
    assertTrue(warned.err().contains(said), warned.err());
    Run clocks =
        run("promise", GOOD, "--shop", SHOP, "--now", "2027-03-13T07:55", "--log", night(20));
    assertEquals("", clocks.err());
  }

  @Test
  void a_log_says_how_long_it_was_too_cold_and_to_call_only_when_the_promise_moves()
      throws IOException {
    String order = changed("\"start\": \"2027-03-11T15:30\"", "\"start\": \"2027-03-12T16:30\"");
    Run run = run("promise", order, "--shop", SHOP, "--now", "2027-03-13T08:10", "--log", night(2));
    String said = run.out().replaceAll("\\s+", " ");
    assertTrue(said.contains("15 h 40 min of it too cold for this class to cure at all"), said);
    assertFalse(said.contains("call whoever"), "the promise stays within the same morning");
    Run moved =
        run("promise", GOOD, "--shop", SHOP, "--now", "2027-03-13T08:10", "--log", night(2));
    String call = moved.out().replaceAll("\\s+", " ");
    assertTrue(
        call.contains("by the plan it was Tue 2027-03-16 09:15: call whoever was told that time"),
        moved.out());
  }

  @Test
  void a_bad_row_of_the_list_is_told_with_its_place_and_the_others_are_answered()
      throws IOException {
    Run run = run("promise", "--list", "demo-data/jobs.csv", "--shop", SHOP, "--now", NOW);
    assertEquals(2, run.code());
    assertTrue(run.err().contains("jobs.csv:4:"), run.err());
    assertTrue(run.out().contains("HL-201"), run.out());
  }

  @Test
  void what_was_learned_is_read_as_a_shop_s_tables_and_never_counted_twice() throws IOException {
    String own = folder.resolve("own").toString();
    Run learned = run("learn", "demo-data/observations.csv", "--out", own);
    assertEquals(0, learned.code(), learned.err());
    assertTrue(learned.out().contains("policy: the times are not shortened"), learned.out());
    Run slower = promise(GOOD, "--data", own);
    assertEquals(0, slower.code(), slower.err());
    assertTrue(slower.out().contains("shop: 15 observations"), slower.out());
    Run twice = run("learn", "demo-data/observations.csv", "--data", own);
    assertEquals(2, twice.code());
    assertTrue(twice.err().contains("count twice"), twice.err());
    assertTrue(Files.readString(Path.of(own, "learned-thin-lasting.svg")).startsWith("<svg"));
    var schema =
        SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
            .getSchema(
                Files.readString(Path.of("data/schema/compounds.schema.json")), InputFormat.JSON);
    String overlay = Files.readString(Path.of(own, "compounds.json"));
    assertEquals(List.of(), schema.validate(overlay, InputFormat.JSON));
  }

  @Test
  void observations_with_semicolons_and_decimal_commas_say_the_same() throws IOException {
    Path file = folder.resolve("seen.csv");
    String text = Files.readString(Path.of("demo-data/observations.csv"));
    Files.writeString(file, "\uFEFF" + text.replace(',', ';').replace('.', ','));
    Run run = run("learn", file.toString());
    assertEquals(0, run.code(), run.err());
    assertEquals(run("learn", "demo-data/observations.csv").out(), run.out());
  }

  @Test
  void a_long_list_shows_that_it_is_getting_on() throws IOException {
    Path list = folder.resolve("jobs.csv");
    List<String> demo = Files.readAllLines(Path.of("demo-data/jobs.csv"));
    StringBuilder text = new StringBuilder(demo.get(0)).append('\n');
    for (int i = 0; i < 520; i++) {
      text.append(demo.get(1)).append('\n');
    }
    Files.writeString(list, text.toString());
    Run run = run("promise", "--list", list.toString(), "--shop", SHOP, "--now", NOW);
    assertEquals(0, run.code(), run.err());
    assertEquals("512 jobs so far\n", run.err());
    assertTrue(run.out().startsWith("Jobs at Thu 2027-03-11 10:00 (+01:00): 520,"), run.out());
  }

  @Test
  void a_bad_observation_is_told_with_its_place() throws IOException {
    Path file = folder.resolve("seen.csv");
    String text = Files.readString(Path.of("demo-data/observations.csv"));
    Files.writeString(file, text.replaceFirst("thin-lasting", "thin-lastng"));
    Run run = run("learn", file.toString());
    assertEquals(2, run.code());
    assertTrue(run.err().contains("seen.csv:2:3: class"), run.err());
    assertTrue(run.err().contains("did you mean thin-lasting?"), run.err());
  }

  /** Some rows of joints on active faces at 20 °C with a gap of 22 µm. */
  private Path observations(String... rows) throws IOException {
    Path file = folder.resolve("seen.csv");
    String head = Files.readAllLines(Path.of("demo-data/observations.csv")).get(0);
    StringBuilder text = new StringBuilder(head).append('\n');
    for (String row : rows) {
      text.append(row).append(",20,active,active,22,none\n");
    }
    Files.writeString(file, text);
    return file;
  }

  @Test
  void a_joint_that_never_cured_is_refused_with_its_row_and_nothing_is_written()
      throws IOException {
    Path file =
        observations(
            "W-1,2027-01-05,thin-lasting,fixed,30,yes,,,",
            "W-2,2027-01-06,thin-lasting,fixed,2880,no,,,");
    Path own = folder.resolve("own");
    Run run = run("learn", file.toString(), "--out", own.toString());
    assertEquals(2, run.code());
    assertTrue(
        run.err().contains("seen.csv:3:5: minutes: W-2 was not fixed after 2880 min, "), run.err());
    assertTrue(run.err().contains("allowed: not fixed after at most 2"), run.err());
    assertFalse(Files.exists(own));
  }

  /** What was seen loose is not promised as fixed by the table that was learned from it. */
  @Test
  void a_written_table_never_says_fixed_before_what_was_seen_loose() throws IOException {
    Path file =
        observations(
            "W-1,2027-01-05,thin-lasting,fixed,12,yes,,,",
            "W-2,2027-01-06,thin-lasting,fixed,180,no,,,");
    String own = folder.resolve("own").toString();
    Run run = run("learn", file.toString(), "--out", own);
    assertEquals(0, run.code(), run.err());
    assertTrue(run.out().contains("look at: W-2 was never seen fixed"), run.out());
    var cure =
        new com.fasterxml.jackson.databind.ObjectMapper()
            .readTree(Files.readString(Path.of(own, "compounds.json")))
            .at("/classes/0/cure");
    double rate =
        Math.exp(
            cure.at("/activationKJ/likely").asDouble()
                * 1000
                / 8.314462618
                * (1 / (cure.at("/referenceC").asDouble() + 273.15) - 1 / 293.15));
    double likely = cure.at("/stages/0/hours").asDouble() * 60 / rate;
    double sure = likely * Math.exp(1.6448536 * cure.at("/spreadLn").asDouble());
    assertTrue(sure > 179, () -> sure + " min");
    Run advice = run("advise", GOOD, "--data", own);
    assertEquals(0, advice.code(), advice.err());
  }

  @Test
  void entries_taken_back_are_told_to_be_imported_again() throws IOException {
    String cold = changed("\"temperatureC\": 18", "\"temperatureC\": 3");
    Path ics = folder.resolve("job.ics");
    Run never = promise(cold, "--ics", ics.toString());
    assertFalse(Files.exists(ics));
    assertEquals("No calendar entry was written: no time is safe for this joint.\n", never.err());
    assertEquals("", promise(GOOD, "--ics", ics.toString()).err());
    String said = promise(cold, "--ics", ics.toString()).err();
    assertTrue(parsed(ics).getEvents().get(1).getStatus().isCancelled());
    assertTrue(said.contains(ics + " now takes its calendar entries back. Import it again"), said);
  }
}
