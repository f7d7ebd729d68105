package annulus.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class LinesAheadTest {
  private static final LoggerLayout LAYOUT =
      new LoggerLayout(',', 0, -1, 1, "2", -1, Optional.empty(), Optional.empty(), 0);

  /** Lines without end, or with a fault of the disk after so many characters. */
  private static final class Lines extends Reader {
    private static final String LINE = "2027-03-11 15:00:00,18.0\n";
    private final long goodUntil;
    private long given;
    private boolean closed;

    Lines(long goodUntil) {
      this.goodUntil = goodUntil;
    }

    @Override
    public int read(char[] to, int from, int most) throws IOException {
      if (given == goodUntil) {
        throw new IOException("the disk is gone");
      }
      int count = (int) Math.min(most, goodUntil - given);
      for (int i = 0; i < count; i++) {
        to[from + i] = LINE.charAt((int) (given++ % LINE.length()));
      }
      return count;
    }

    @Override
    public void close() {
      closed = true;
    }
  }

  private static void forEach(Reader reader, LinesAhead.LineConsumer consumer) throws IOException {
    try (LoggerLines lines = new LoggerLines("log", reader)) {
      LinesAhead.forEach(lines, LAYOUT, consumer);
    }
  }

  @Test
  void lines_of_several_batches_come_in_order_with_their_numbers() throws IOException {
    List<String> written = IntStream.range(0, 4321).mapToObj(i -> "line " + i).toList();
    List<String> found = new ArrayList<>();
    forEach(
        new StringReader(String.join("\n", written)),
        (number, cells) -> {
          found.add(cells.line().text());
          assertEquals(found.size(), number);
        });
    assertEquals(written, found);
  }

  @Test
  void a_disk_that_fails_is_told_after_the_lines_before_it() {
    List<Integer> found = new ArrayList<>();
    IOException failure =
        assertThrows(
            IOException.class,
            () ->
                forEach(
                    new Lines(2500L * Lines.LINE.length()), (number, cells) -> found.add(number)));
    assertEquals("the disk is gone", failure.getMessage());
    assertEquals(2500, found.size());
  }

  @Test
  void a_consumer_that_refuses_ends_the_reading_of_a_log_without_end() {
    Lines lines = new Lines(Long.MAX_VALUE);
    IllegalStateException refusal =
        assertThrows(
            IllegalStateException.class,
            () ->
                forEach(
                    lines,
                    (number, cells) -> {
                      if (number == 1234) {
                        throw new IllegalStateException("enough");
                      }
                    }));
    assertEquals("enough", refusal.getMessage());
    assertTrue(lines.closed);
  }

  @Test
  void a_line_that_is_too_long_is_told_with_its_place_after_the_lines_before_it() {
    String text = "a\n".repeat(1500) + "x".repeat(5000);
    List<Integer> found = new ArrayList<>();
    InputRefused refused =
        assertThrows(
            InputRefused.class,
            () -> forEach(new StringReader(text), (number, cells) -> found.add(number)));
    assertEquals(1501, refused.problems().get(0).line());
    assertEquals(1500, found.size());
  }
}
