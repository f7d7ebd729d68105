package annulus.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The fit command against printed fits of ISO 286-1 and ANSI B4.2 tables. */
class FitCommandPublishedTest {
  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  private int run(String... args) {
    Surround surround =
        new Surround(
            Clock.fixed(Instant.parse("2027-03-11T09:00:00Z"), ZoneOffset.UTC), ZoneOffset.UTC);
    PrintStream o = new PrintStream(out, true, StandardCharsets.UTF_8);
    PrintStream e = new PrintStream(err, true, StandardCharsets.UTF_8);
    return new Cli(surround, o, e).run(args);
  }

  private String text() {
    return out.toString(StandardCharsets.UTF_8);
  }

  @ParameterizedTest
  @CsvSource({
    "34 H11/c11, +440.0, +120.0",
    "40 H7/s6, -18.0, -59.0",
    "40 H7/u6, -35.0, -76.0",
    "50 H8/f7, +89.0, +25.0",
    "25 H7/g6, +41.0, +7.0",
    "25 H7/n6, +6.0, -28.0",
    "25 H7/p6, -1.0, -35.0",
    "10 K7/h6, +14.0, -10.0",
    "12 N7/h6, +6.0, -23.0"
  })
  void printed_clearances_come_out(String fit, String greatest, String least) {
    assertEquals(ExitCode.ANSWER, run("fit", fit));
    assertTrue(text().contains("largest   clearance " + greatest + " µm diametral"), text());
    assertTrue(text().contains("smallest  clearance " + least + " µm diametral"), text());
  }

  @Test
  void a_measured_size_is_inside_outside_or_not_decided() {
    String[] tools = {"--instrument", "bore-micrometer-three-point"};
    assertEquals(0, run("fit", "35 H7", "--bore", "35.012", tools[0], tools[1]));
    assertTrue(text().contains("INSIDE the limits"));
    assertEquals(1, run("fit", "35 H7", "--bore", "35.040", tools[0], tools[1]));
    assertTrue(text().contains("OUTSIDE the limits"));
    assertEquals(1, run("fit", "35 H7", "--bore", "35.025", tools[0], tools[1]));
    assertTrue(text().contains("NOT DECIDED"));
  }

  @ParameterizedTest
  @CsvSource({
    "35 k6, --bore, '--bore: a bore was measured, but no hole is given to judge it by; allowed: \"35 H7\"'",
    "35 H7, --part, '--part: a part was measured, but no shaft is given to judge it by; allowed: \"35 k6\"'"
  })
  void a_size_that_nothing_judges_is_refused(String fit, String option, String said) {
    int code = run("fit", fit, option, "34.9", "--instrument", "outside-micrometer");
    assertEquals(ExitCode.BAD_INPUT, code);
    String message = err.toString(StandardCharsets.UTF_8);
    assertTrue(message.contains(said), message);
  }

  @Test
  void zones_of_two_diameters_are_no_fit() {
    assertEquals(ExitCode.BAD_INPUT, run("fit", "35 H7", "36 k6"));
    String message = err.toString(StandardCharsets.UTF_8);
    assertTrue(message.contains("35 and 36 mm do not belong together"), message);
    assertEquals(ExitCode.ANSWER, run("fit", "35 H7", "35.0 k6"));
  }

  @Test
  void a_wrong_designation_says_what_is_allowed_and_leaves_no_trace() {
    assertEquals(ExitCode.BAD_INPUT, run("fit", "35 Q7"));
    String message = err.toString(StandardCharsets.UTF_8);
    assertTrue(message.startsWith("command line:2: "), message);
    assertTrue(message.contains("allowed: "), message);
    assertFalse(message.contains("\tat "), message);
  }

  /** 35.0197 less 34.985 mm by hand: 34.7 µm across, 17.3 µm per side. */
  @Test
  void a_measured_pair_is_told_its_own_clearance_and_what_it_was_read_with() {
    String tools = "bore-micrometer-three-point,outside-micrometer";
    run("fit", "35 H7", "35 g6", "--bore", "35.018 35.021 35.020", "--part", "34.985");
    String caliper = text().replaceAll("\\s+", " ");
    assertTrue(caliper.contains("read with digital or dial caliper"), caliper);
    assertTrue(caliper.contains("flat jaws read a bore small"), caliper);
    out.reset();
    String bore = "35.018 35.021 35.020";
    run("fit", "35 H7", "35 g6", "--bore", bore, "--part", "34.985", "--instrument", tools);
    String pair = text().replaceAll("\\s+", " ");
    assertTrue(pair.contains("this pair as measured: clearance 34.7 ± "), pair);
    assertTrue(pair.contains("17.3 ± "), pair);
  }
}
