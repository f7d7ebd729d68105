package annulus.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.OrderText;
import annulus.exchange.OrderReader;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.Reader;
import java.io.StringReader;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ForkJoinPool;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Job lists: every row comes out again, answered or refused with its place. */
class BatchTest {
  private static final String HEADER =
      "job,title,bore_mm,part_mm,engagement_mm,bore_material,part_material,bore_instrument,"
          + "part_instrument,temperature_c,start,zone\n";
  private static final String ROW =
      "A-1,Bush,30.060 30.061,30.000,20,steel-plain,steel-alloy,bore-gauge-dial,"
          + "outside-micrometer,18,2027-03-12T09:00,Europe/Dublin\n";

  @TempDir Path folder;

  /** A run over a job list: exit code, streams and result rows. */
  private record Batch(CliRun run, List<CSVRecord> rows, String file) {
    String cell(int row, String column) {
      return rows.get(row).get(column);
    }

    List<String> errors() {
      return run.err().lines().map(l -> l.substring(l.indexOf("jobs.csv"))).toList();
    }
  }

  private Batch batch(String jobs) throws IOException {
    return batch(jobs.getBytes(StandardCharsets.UTF_8));
  }

  private Batch batch(byte[] jobs) throws IOException {
    Path in = Files.write(folder.resolve("jobs.csv"), jobs);
    Path out = folder.resolve("results.csv");
    CliRun run = CliRun.of("advise", "--batch", in.toString(), "--out", out.toString());
    String text = Files.exists(out) ? Files.readString(out) : "";
    return new Batch(run, rows(text), text);
  }

  private static List<CSVRecord> rows(String text) throws IOException {
    CSVFormat format = CSVFormat.DEFAULT.builder().setHeader().setSkipHeaderRecord(true).get();
    try (CSVParser parser = CSVParser.parse(new StringReader(text), format)) {
      return parser.getRecords();
    }
  }

  @Test
  void every_row_is_answered_and_the_code_says_so() throws IOException {
    Batch batch = batch(HEADER + ROW + ROW.replace("A-1", "A-2"));
    assertEquals(0, batch.run().code());
    assertEquals("", batch.run().err());
    assertTrue(batch.run().out().startsWith("2 answered, 0 refused; written to "));
    assertEquals(List.of("A-1", "A-2"), batch.rows().stream().map(r -> r.get("job")).toList());
    assertEquals("use-compound", batch.cell(0, "decision"));
    assertEquals("3", batch.cell(1, "line"));
  }

  /** The list that {@code promise --list} reads is the list a shop has. */
  @Test
  void what_was_promised_may_stand_in_the_list_and_changes_no_answer() throws IOException {
    String plain = batch(HEADER + ROW).file();
    String header = HEADER.stripTrailing() + ",promised\n";
    assertEquals(plain, batch(header + ROW.stripTrailing() + ",2027-03-20T10:00\n").file());
  }

  @Test
  void a_bad_row_is_placed_and_the_others_are_answered() throws IOException {
    Batch batch = batch(HEADER + ROW + ROW.replace("30.060 30.061", "4197") + ROW);
    assertEquals(2, batch.run().code());
    assertTrue(batch.run().out().startsWith("2 answered, 1 refused"));
    assertEquals(
        "jobs.csv:3:3: bore_mm: 4197 mm is out of range; allowed: 0.5 to 500 mm; a missing decimal"
            + " point? 41.97; thousandths of an inch? 106.604 mm",
        batch.errors().get(0));
    assertEquals("refused", batch.cell(1, "decision"));
    assertEquals("A-1", batch.cell(1, "job"));
    assertTrue(batch.cell(1, "reason").contains("jobs.csv:3:3: bore_mm"));
    assertEquals("use-compound", batch.cell(2, "decision"));
  }

  @ParameterizedTest
  @CsvSource({
    "',18,', ',68,', 10: temperature_c: 68 °C is out of range",
    "',20,', ',,', engagement_mm: is missing; allowed: this field is needed",
    "'steel-plain', 'steel-plane', 6: bore_material: \"steel-plane\" is unknown; allowed: did you",
    "'2027-03-12T09:00', '2027-03-28T01:30', 11: start: 2027-03-28T01:30 does not exist",
    "'Europe/Dublin', 'Dublin', 12: zone: \"Dublin\" is no time zone",
    "'30.060 30.061', '29.5', 3: bore: bore 29.500 and part 30.000 mm: the part is larger",
    "'30.060 30.061', '', bore_mm: is missing",
    "'30.060 30.061', '\"30,06\"', 'bore_mm: \"30,06\" has a decimal comma; allowed: a decimal'",
    "'30.060 30.061', '\"30,06\"', 'or a first line # decimal: comma'",
    "'Bush,', '', 11 cells; allowed: 12 cells as in the header",
    "'Bush,', 'Bush,,', 13 cells; allowed: 12 cells as in the header",
  })
  void a_slip_names_its_column(String right, String wrong, String said) throws IOException {
    Batch batch = batch(HEADER + ROW.replace(right, wrong));
    assertEquals(2, batch.run().code());
    assertTrue(batch.errors().get(0).startsWith("jobs.csv:2:"), batch.run().err());
    assertTrue(batch.errors().get(0).contains(said), batch.run().err());
    assertEquals(1, batch.rows().size());
  }

  @Test
  void a_row_is_answered_as_the_same_order_alone() throws IOException {
    Batch batch = batch(Files.readString(Path.of("demo-data/jobs.csv")));
    CliRun alone =
        CliRun.of(
            "advise",
            "--job",
            "HL-204",
            "--bore",
            "22.054 22.056",
            "--part",
            "21.996",
            "--engagement",
            "7",
            "--materials",
            "aluminium-7075,steel-bearing",
            "--finish",
            "as-machined,ground",
            "--instrument",
            "bore-micrometer-three-point,outside-micrometer",
            "--temp",
            "19",
            "--primer",
            "primer-solvent",
            "--consequence",
            "injury",
            "--comes-apart-later",
            "--start",
            "2027-03-12T10:20",
            "--zone",
            "Europe/Vienna",
            "--json");
    var json = new com.fasterxml.jackson.databind.ObjectMapper().readTree(alone.out());
    CSVRecord row =
        batch.rows().stream().filter(r -> r.get("job").equals("HL-204")).findFirst().orElseThrow();
    assertEquals(json.at("/decision/kind").asText(), row.get("decision"));
    assertEquals(json.at("/decision/class").asText(), row.get("class"));
    assertEquals(json.at("/handBack/at").asText(), row.get("hand_back"), alone.out());
    assertEquals("refused", batch.cell(2, "decision"));
  }

  @Test
  void comma_semicolon_and_tab_give_the_same_results() throws IOException {
    String comma = batch(HEADER + ROW).file();
    String cells = HEADER + ROW;
    assertEquals(comma, batch(cells.replace(',', ';')).file());
    assertEquals(comma, batch(cells.replace(',', '\t')).file());
    assertEquals(comma, batch("\uFEFF" + cells).file());
  }

  private static String shifted(String results) {
    return results.replaceAll("(?m)^2,", "3,");
  }

  @ParameterizedTest
  @ValueSource(strings = {"# decimal: comma\n", "#decimal: comma;;;;\r\n"})
  void a_declared_decimal_comma_gives_the_same_results(String declared) throws IOException {
    String comma = batch(HEADER + ROW).file();
    String cells = (HEADER + ROW).replace(',', ';').replaceAll("(?<=[0-9])\\.(?=[0-9])", ",");
    assertTrue(cells.contains("30,060 30,061"));
    assertEquals(shifted(comma), batch("\uFEFF" + declared + cells).file());
  }

  @Test
  void under_a_declared_comma_each_number_may_carry_its_unit() throws IOException {
    String row = ROW.replace("30.060 30.061", "1.18346 in 1.18350in").replace(",18,", ",18.5 C,");
    String point = batch(HEADER + row).file();
    String cells = (HEADER + row).replace(',', ';').replaceAll("(?<=[0-9])\\.(?=[0-9])", ",");
    Batch batch = batch("# decimal: comma\n" + cells);
    assertEquals(List.of(), batch.errors());
    assertEquals(shifted(point), batch.file());
  }

  @Test
  void a_point_under_a_declared_comma_is_refused_but_not_in_words() throws IOException {
    String start = "# decimal: comma\n" + HEADER.replace(',', ';');
    String row = ROW.replace(',', ';').replace("Bush", "see 4.2 below");
    Batch batch = batch(start + row);
    assertEquals(
        List.of(
            "jobs.csv:3:3: bore_mm: \"30.060 30.061\" has a point, but the file declares a decimal"
                + " comma; allowed: a decimal comma: 30,060 30,061",
            "jobs.csv:3:4: part_mm: \"30.000\" has a point, but the file declares a decimal comma;"
                + " allowed: a decimal comma: 30,000"),
        batch.errors());
  }

  @Test
  void a_job_number_with_a_comma_stays_as_it_was_typed() throws IOException {
    String row = ROW.replace(',', ';').replace('.', ',').replace("A-1", "12,5");
    Batch batch = batch("# decimal: comma\n" + HEADER.replace(',', ';') + row);
    assertEquals("12,5", batch.cell(0, "job"), batch.run().err());
  }

  @Test
  void a_declaration_that_is_not_understood_is_refused() throws IOException {
    Batch batch = batch("# decimals with comma\n" + HEADER + ROW);
    assertEquals(2, batch.run().code());
    assertTrue(batch.errors().get(0).startsWith("jobs.csv:1:1: \"# decimals"));
  }

  @Test
  void lines_may_end_as_any_system_ends_them() throws IOException {
    String lf = batch(HEADER + ROW + ROW).file();
    assertEquals(lf, batch((HEADER + ROW + ROW).replace("\n", "\r\n")).file());
    assertEquals(lf, batch(HEADER.replace("\n", "\r\n") + ROW + ROW.strip()).file());
    assertEquals(lf, batch(HEADER + ROW.replace("\n", "\r") + ROW.replace("\n", "\r\n")).file());
  }

  @Test
  void blank_lines_do_not_shift_the_place_of_a_problem() throws IOException {
    Batch batch = batch(HEADER + "\n\r\n" + ROW + "  \n" + ROW.replace(",18,", ",68,"));
    assertEquals("4", batch.cell(0, "line"));
    assertTrue(batch.errors().get(0).startsWith("jobs.csv:6:10: temperature_c"));
    assertEquals(2, batch.rows().size());
  }

  @Test
  void a_quoted_cell_may_hold_line_breaks_quotes_and_commas() throws IOException {
    String row = ROW.replace("Bush", "\"two\nlines, \"\"quoted\"\"\"");
    Batch batch = batch(HEADER + row + ROW.replace(",18,", ",68,"));
    assertEquals("use-compound", batch.cell(0, "decision"));
    assertTrue(batch.errors().get(0).startsWith("jobs.csv:4:10:"), batch.run().err());
  }

  @Test
  void a_quote_that_never_closes_loses_no_row_before_it_and_says_so() throws IOException {
    Batch batch = batch(HEADER + ROW + ROW.replace("Bush", "\"Bush") + ROW);
    assertEquals(2, batch.run().code());
    assertEquals("use-compound", batch.cell(0, "decision"));
    assertEquals("refused", batch.cell(1, "decision"));
    assertEquals(2, batch.rows().size());
    assertTrue(batch.errors().get(0).startsWith("jobs.csv:3: has a quote that does not close"));
    assertTrue(batch.errors().get(0).contains("all after it are not read"));
  }

  @Test
  void letters_after_a_closing_quote_are_never_glued_to_it() throws IOException {
    Batch batch = batch(HEADER + ROW + ROW.replace("30.000", "\"30.00\"5"));
    assertEquals("refused", batch.cell(1, "decision"));
  }

  @Test
  void a_row_with_wrong_bytes_is_refused_and_the_others_are_answered() throws IOException {
    String text = HEADER + ROW.replace("Bush", "Büchse") + ROW;
    Batch batch = batch(text.getBytes(StandardCharsets.ISO_8859_1));
    assertEquals(
        List.of("jobs.csv:2:2: title: is not UTF-8 text; allowed: a file saved as UTF-8"),
        batch.errors());
    assertEquals("use-compound", batch.cell(1, "decision"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"UTF-16", "UTF-16LE", "UTF-16BE"})
  void a_list_of_two_bytes_a_letter_is_refused_alike_and_once(String encoding) throws IOException {
    for (String text : List.of(HEADER + ROW, "# decimal: comma\n" + HEADER + ROW)) {
      Path jobs = folder.resolve("jobs.csv");
      Files.write(jobs, text.getBytes(Charset.forName(encoding)));
      String out = folder.resolve("results.csv").toString();
      String shop = "demo-data/shop.json";
      for (CliRun run :
          List.of(
              CliRun.of("advise", "--batch", jobs.toString(), "--out", out),
              CliRun.of("promise", "--list", jobs.toString(), "--shop", shop))) {
        assertEquals(2, run.code());
        assertEquals(jobs + ": is not UTF-8 text; allowed: text saved as UTF-8\n", run.err());
        assertFalse(Files.exists(Path.of(out)));
      }
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"\0", "\u001b", "\u0007", "\u0085", "\uFEFF"})
  void a_cell_with_what_nobody_types_is_refused_as_in_a_stock_sheet(String hidden)
      throws IOException {
    Batch title = batch(HEADER + ROW.replace("Bush", "Bu" + hidden + "sh") + ROW);
    assertEquals(
        List.of("jobs.csv:2:2: title: has broken characters; allowed: plain text"), title.errors());
    assertEquals("use-compound", title.cell(1, "decision"));
    Batch job = batch(HEADER + ROW.replace("A-1", "A" + hidden + "1"));
    assertEquals("", job.cell(0, "job"));
    assertFalse(job.file().contains(hidden));
    String promised = HEADER.stripTrailing() + ",promised\n" + ROW.stripTrailing() + ",20";
    Batch beside = batch(promised + hidden + "27-03-20\n");
    assertTrue(beside.errors().get(0).startsWith("jobs.csv:2:13: promised: has broken"));
    String stock = "lot,class,container_ml,left_ml\nA" + hidden + "1,thin-lasting,10,5\n";
    CliRun check =
        CliRun.of(
            "stock", "check", Files.writeString(folder.resolve("stock.csv"), stock).toString());
    assertTrue(check.err().contains(":2:1: lot: has broken characters; allowed: plain text"));
  }

  @Test
  void a_cell_of_several_lines_is_no_broken_one() throws IOException {
    Batch batch = batch(HEADER + ROW.replace("Bush", "\"Bush\r\nof\tthe pump\""));
    assertEquals(List.of(), batch.errors());
    assertEquals("use-compound", batch.cell(0, "decision"));
  }

  @ParameterizedTest
  @CsvSource({
    "bore_mm, bore_mn, 'jobs.csv:1:3: bore_mn: is not a column here; allowed: did you mean bore_mm'",
    "title, job, jobs.csv:1:2: job: stands twice; allowed: each column once",
    "title, , 'jobs.csv:1:2: is not a column here'",
  })
  void a_wrong_header_is_refused_before_any_row(String right, String wrong, String said)
      throws IOException {
    Batch batch = batch(HEADER.replace(right, wrong == null ? "" : wrong) + ROW);
    assertEquals(2, batch.run().code());
    assertTrue(batch.errors().get(0).startsWith(said), batch.run().err());
    assertEquals(0, batch.rows().size());
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "\n\n", "\uFEFF", "# decimal: comma\n"})
  void an_empty_file_is_no_job_list(String text) throws IOException {
    Batch batch = batch(text);
    assertEquals(2, batch.run().code());
    assertTrue(batch.errors().get(0).contains("is empty; allowed: a header line and rows"));
  }

  @Test
  void a_list_of_no_jobs_is_answered() throws IOException {
    Batch batch = batch(HEADER);
    assertEquals(0, batch.run().code());
    assertTrue(batch.run().out().startsWith("0 answered, 0 refused"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"=1+1", "+cmd", "-2+3", "@SUM(A1)", "=HYPERLINK(\"\"x\"\")"})
  void a_job_that_a_spreadsheet_would_run_is_made_safe(String job) throws IOException {
    Batch batch = batch(HEADER + ROW.replace("A-1", "\"" + job + "\""));
    assertEquals("'" + job.replace("\"\"", "\""), batch.cell(0, "job"));
    Batch refused = batch(HEADER + ROW.replace("A-1", "\"" + job + "\"").replace(",18,", ",68,"));
    assertEquals("'" + job.replace("\"\"", "\""), refused.cell(0, "job"));
  }

  @Test
  void spreadsheet_words_for_true_are_taken_in_any_case() throws IOException {
    String header = HEADER.replace("zone", "zone,comes_apart_later");
    for (String yes : List.of("TRUE", "Yes", "yes", "true")) {
      Batch batch = batch(header + ROW.replace("Dublin", "Dublin," + yes));
      assertEquals(0, batch.run().code(), batch.run().err());
    }
    Batch batch = batch(header + ROW.replace("Dublin", "Dublin,perhaps"));
    assertTrue(batch.errors().get(0).contains("comes_apart_later: is the text \"perhaps\""));
  }

  // many rows

  /** Rows made while they are read; none is kept. */
  private static final class ManyRows extends Reader {
    private final int count;
    private int next = -1;
    private StringReader row = new StringReader("");

    ManyRows(int count) {
      this.count = count;
    }

    @Override
    public int read(char[] buffer, int from, int length) throws IOException {
      int got = row.read(buffer, from, length);
      while (got < 0 && next < count) {
        row = new StringReader(next < 0 ? HEADER : row(next));
        next++;
        got = row.read(buffer, from, length);
      }
      return got;
    }

    private static String row(int number) {
      String named = ROW.replace("A-1", "N-" + number);
      return number % 1000 == 7 ? named.replace(",18,", ",68,") : named;
    }

    @Override
    public void close() {}
  }

  /** Counts result rows and checks their order without keeping them. */
  private static final class InOrder implements Appendable {
    private final StringBuilder line = new StringBuilder();
    private int rows = -1;

    @Override
    public Appendable append(CharSequence text) {
      text.chars().forEach(c -> append((char) c));
      return this;
    }

    @Override
    public Appendable append(CharSequence text, int start, int end) {
      return append(text.subSequence(start, end));
    }

    @Override
    public Appendable append(char c) {
      if (c != '\n') {
        line.append(c);
        return this;
      }
      if (rows >= 0) {
        assertTrue(line.toString().startsWith((rows + 2) + ",N-" + rows + ","), line.toString());
      }
      rows++;
      line.setLength(0);
      return this;
    }
  }

  @Test
  void twenty_thousand_rows_come_out_in_their_order() throws IOException {
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    InOrder out = new InOrder();
    BatchRun.Count count = run(new ManyRows(20_000), out, err);
    assertEquals(new BatchRun.Count(19_980, 20), count);
    assertEquals(20_000, out.rows);
    assertEquals(20, err.toString(StandardCharsets.UTF_8).lines().count());
  }

  private static BatchRun.Count run(Reader in, Appendable out, ByteArrayOutputStream err)
      throws IOException {
    OrderReader reader =
        new OrderReader(
            OrderText.KNOWLEDGE, CliRun.SURROUND.clock().instant(), CliRun.SURROUND.zone());
    PrintStream errors = new PrintStream(err, true, StandardCharsets.UTF_8);
    return BatchRun.run("jobs.csv", in, out, OrderText.ADVISOR, reader, errors);
  }

  @Test
  void the_number_of_workers_changes_no_byte() throws Exception {
    List<Map.Entry<String, String>> results = new ArrayList<>();
    for (int workers : List.of(1, 2, 7)) {
      ForkJoinPool pool = new ForkJoinPool(workers);
      try {
        results.add(
            pool.submit(
                    () -> {
                      StringBuilder out = new StringBuilder();
                      ByteArrayOutputStream err = new ByteArrayOutputStream();
                      run(new ManyRows(1100), out, err);
                      return Map.entry(out.toString(), err.toString(StandardCharsets.UTF_8));
                    })
                .get());
      } finally {
        pool.shutdown();
      }
    }
    assertEquals(results.get(0), results.get(1));
    assertEquals(results.get(0), results.get(2));
  }
}
