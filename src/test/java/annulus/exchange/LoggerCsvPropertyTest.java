package annulus.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringReader;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import net.jqwik.api.statistics.Statistics;

class LoggerCsvPropertyTest {
  private static final LoggerRules RULES = LoggerCsvTest.rules();
  private static final LoggerOptions UTC = LoggerOptions.in(ZoneOffset.UTC);
  private static final List<String> FORMS =
      List.of(
          "uuuu-MM-dd HH:mm:ss",
          "uuuu/MM/dd HH:mm:ss",
          "dd/MM/uuuu HH:mm:ss",
          "MM/dd/uuuu hh:mm:ss a",
          "d-M-uuuu H:mm:ss",
          "dd.MM.uuuu HH:mm:ss",
          "dd MMM uuuu HH:mm:ss",
          "M/d/uu HH:mm:ss");

  @Property
  void a_file_is_read_as_it_was_written_or_refused_but_never_misread(
      @ForAll @IntRange(min = 0, max = 7) int form,
      @ForAll @IntRange(min = 0, max = 4_000) int day,
      @ForAll @IntRange(min = 0, max = 1_439) int minute,
      @ForAll @IntRange(min = 1, max = 90) int stepMinutes,
      @ForAll @Size(min = 2, max = 80) List<@IntRange(min = -300, max = 450) Integer> tenths,
      @ForAll boolean newestFirst) {
    LocalDateTime start = LocalDateTime.of(2020, 1, 1, 0, 0).plusDays(day).plusMinutes(minute);
    DateTimeFormatter writer = DateTimeFormatter.ofPattern(FORMS.get(form), Locale.ENGLISH);
    List<String> rows = new ArrayList<>();
    for (int i = 0; i < tenths.size(); i++) {
      LocalDateTime at = start.plusMinutes((long) i * stepMinutes);
      String row =
          writer.format(at) + ";" + String.format(Locale.ROOT, "%.1f", tenths.get(i) / 10.0);
      rows.add(newestFirst ? 0 : rows.size(), row);
    }
    List<double[]> pieces = new ArrayList<>();
    Optional<String> refusal = read("time;temp °C\n" + String.join("\n", rows) + "\n", pieces);
    Statistics.label("outcome").collect(refusal.isPresent() ? "asked" : "read");
    if (refusal.isPresent()) {
      assertTrue(refusal.get().contains("day first"), refusal.get());
      return;
    }
    assertEquals(tenths.size() - 1, pieces.size());
    for (int i = 0; i < pieces.size(); i++) {
      double seconds = start.toEpochSecond(ZoneOffset.UTC) + i * 60.0 * stepMinutes;
      assertEquals(seconds, pieces.get(i)[0]);
      assertEquals(seconds + 60.0 * stepMinutes, pieces.get(i)[2]);
      assertEquals(tenths.get(i) / 10.0, pieces.get(i)[1], 1e-9);
    }
  }

  private static Optional<String> read(String text, List<double[]> pieces) {
    try {
      LoggerCsv.read(
          "made.csv",
          () -> new StringReader(text),
          UTC,
          RULES,
          () -> {
            pieces.clear();
            return (s, a, e, b) -> pieces.add(new double[] {s, a, e, b});
          });
      return Optional.empty();
    } catch (InputRefused e) {
      return Optional.of(e.getMessage());
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  @Property
  void a_damaged_file_gives_pieces_that_join_or_a_refusal(
      @ForAll @IntRange(min = 1, max = 40) int damages, @ForAll int seed) {
    StringBuilder text = new StringBuilder("time,temp °C\n");
    LocalDateTime start = LocalDateTime.of(2027, 3, 12, 16, 0);
    for (int i = 0; i < 60; i++) {
      text.append(start.plusMinutes(10L * i)).append(',').append(20 - i / 10.0).append('\n');
    }
    Random random = new Random(seed);
    String marks = "0123456789.,;:-/\"\nTZ°CF \t";
    for (int i = 0; i < damages; i++) {
      text.setCharAt(random.nextInt(text.length()), marks.charAt(random.nextInt(marks.length())));
    }
    List<double[]> pieces = new ArrayList<>();
    boolean refused = read(text.toString(), pieces).isPresent();
    Statistics.label("outcome").collect(refused ? "refused" : "read");
    for (int i = 0; i < pieces.size(); i++) {
      assertTrue(pieces.get(i)[2] > pieces.get(i)[0]);
      assertTrue(i == 0 || pieces.get(i)[0] == pieces.get(i - 1)[2]);
      assertTrue(pieces.get(i)[1] >= -55 && pieces.get(i)[1] <= 125);
    }
  }
}
