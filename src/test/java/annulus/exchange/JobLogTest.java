package annulus.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.DeskData;
import annulus.advice.JointOrder;
import annulus.advice.MeasuredCourse.Hole;
import annulus.advice.PromiseDesk;
import annulus.advice.Reassessment;
import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;

class JobLogTest {
  private static final PromiseDesk DESK = DeskData.desk();
  private static final JointOrder ORDER =
      DeskData.order("2027-03-12T17:00", o -> o.put("temperatureC", 18));

  private static JobLog read(Supplier<Reader> source, JointOrder order, String now)
      throws IOException {
    return JobLog.read(
        "log.csv",
        source,
        LoggerOptions.in(DeskData.VIENNA),
        LoggerRules.read(DataFiles.bundled()),
        order,
        DeskData.at(now));
  }

  private static JobLog demo(String name, String now) throws IOException {
    return read(LoggerSource.of(Path.of("demo-data/loggers/" + name)), ORDER, now);
  }

  /** Readings every so many seconds at a temperature given by the minute since the start. */
  private static Supplier<Reader> log(
      int every, int count, java.util.function.IntToDoubleFunction c) {
    StringBuilder text = new StringBuilder("time,temperature (°C)\n");
    Instant start = ORDER.start();
    for (int i = 0; i < count; i++) {
      text.append(start.plusSeconds((long) i * every));
      text.append(',').append(c.applyAsDouble(i)).append('\n');
    }
    String whole = text.toString();
    return () -> new StringReader(whole);
  }

  @Test
  void a_log_just_as_planned_leaves_the_ready_time_almost_where_it_was() throws IOException {
    JobLog log = read(log(600, 73, i -> 18), ORDER, "2027-03-13T05:00");
    Reassessment again = DESK.reassess(ORDER, log.course());
    assertEquals(18, again.measuredC().orElseThrow(), 0.01);
    assertFalse(again.moved().orElseThrow().compareTo(Duration.ofMinutes(5)) > 0);
    assertTrue(log.course().holes().isEmpty());
    assertTrue(again.sureFraction() > 0 && again.sureFraction() < again.typicalFraction());
  }

  @Test
  void a_colder_night_than_planned_moves_it_later_and_a_warmer_one_sooner() throws IOException {
    Reassessment cold =
        DESK.reassess(ORDER, read(log(600, 73, i -> 10), ORDER, "2027-03-13T05:00").course());
    Reassessment warm =
        DESK.reassess(ORDER, read(log(600, 73, i -> 25), ORDER, "2027-03-13T05:00").course());
    assertTrue(cold.moved().orElseThrow().compareTo(Duration.ofHours(1)) > 0);
    assertTrue(warm.moved().orElseThrow().compareTo(Duration.ofHours(-1)) < 0);
    assertTrue(cold.sureFraction() < warm.sureFraction());
  }

  @Test
  void a_night_without_readings_is_taken_cold_and_says_what_it_may_hide() throws IOException {
    JobLog log = demo("gap-over-night.csv", "2027-03-13T08:30");
    assertEquals(1, log.course().holes().size());
    Hole hole = log.course().holes().get(0);
    assertTrue(hole.length().toHours() >= 9);
    assertTrue(hole.takenC() <= Math.min(hole.beforeC(), hole.afterC()));
    Reassessment again = DESK.reassess(ORDER, log.course());
    Instant straight = again.holesStraight().orElseThrow().ready().orElseThrow();
    assertTrue(straight.isBefore(again.now().ready().orElseThrow()));
  }

  @Test
  void readings_after_now_do_not_count() throws IOException {
    JobLog early = demo("plain.csv", "2027-03-12T20:00");
    assertEquals(Duration.ofHours(3), early.course().until());
    assertEquals(
        early.course().history().celsiusAt(3 * 3600),
        early.course().history().celsiusAt(100 * 3600));
  }

  @Test
  void before_the_first_and_after_the_last_reading_it_counts_as_cold_as_the_plan_may_be()
      throws IOException {
    JobLog log = read(log(600, 7, i -> 20), ORDER, "2027-03-13T08:00");
    assertEquals(1, log.course().holes().size());
    // planned 18 ± 1.5 °C
    assertEquals(16.5, log.course().history().celsiusAt(10 * 3600), 1e-9);
    Supplier<Reader> late = log(600, 100, i -> 20);
    JointOrder sooner = DeskData.order("2027-03-12T12:00", o -> o.put("temperatureC", 18));
    JobLog first = read(late, sooner, "2027-03-12T20:00");
    assertEquals(16.5, first.course().history().celsiusAt(3600), 1e-9);
    assertEquals(Duration.ofHours(5), first.course().missing());
  }

  @Test
  void a_log_of_another_day_is_refused() {
    InputRefused refused =
        assertThrows(
            InputRefused.class,
            () ->
                read(
                    log(600, 50, i -> 20),
                    DeskData.order("2027-06-12T12:00", o -> {}),
                    "2027-06-12T20:00"));
    assertTrue(refused.getMessage().contains("has no readings between"), refused.getMessage());
  }

  @Test
  void days_at_one_second_are_read_in_little_memory_and_come_to_the_same() throws IOException {
    int seconds = 3 * 86_400;
    Supplier<Reader> fine = () -> new Seconds(seconds);
    JobLog log = read(fine, ORDER, "2027-03-15T17:00");
    assertEquals(seconds, log.reading().rowsRead());
    Reassessment fineAgain = DESK.reassess(ORDER, log.course());
    Reassessment coarse =
        DESK.reassess(
            ORDER,
            read(
                    log(
                        60,
                        seconds / 60 + 1,
                        i -> Math.rint(1700 + 200 * Math.sin(i / 200.0)) / 100),
                    ORDER,
                    "2027-03-15T17:00")
                .course());
    assertEquals(coarse.measuredC().orElseThrow(), fineAgain.measuredC().orElseThrow(), 0.05);
  }

  /** A log that is made while it is read: one reading a second. */
  private static final class Seconds extends Reader {
    private final int count;
    private int next = -1;
    private String line = "";
    private int at;

    Seconds(int count) {
      this.count = count;
    }

    @Override
    public int read(char[] buffer, int offset, int length) {
      if (at == line.length()) {
        if (next == count) {
          return -1;
        }
        line = next < 0 ? "time,temperature (°C)\n" : row();
        next++;
        at = 0;
      }
      int taken = Math.min(length, line.length() - at);
      line.getChars(at, at + taken, buffer, offset);
      at += taken;
      return taken;
    }

    private String row() {
      double celsius = Math.rint(1700 + 200 * Math.sin(next / 12_000.0)) / 100;
      return ORDER.start().plusSeconds(next) + "," + celsius + "\n";
    }

    @Override
    public void close() {}
  }
}
