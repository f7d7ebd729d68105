package annulus.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.DeskData;
import annulus.advice.JointOrder;
import annulus.advice.MeasuredCourse;
import annulus.cure.TemperatureHistory;
import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** A list's log, read once, says of each job what reading it for that job alone says. */
class SharedLogTest {
  private static final LoggerRules RULES = rules();
  private static final LoggerOptions OPTIONS = LoggerOptions.in(DeskData.VIENNA);
  private static final int PLENTY = 1_000_000;

  private static LoggerRules rules() {
    try {
      return LoggerRules.read(DataFiles.bundled());
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  private static SharedLog shared(Supplier<Reader> source, Instant now, long mostHeld)
      throws IOException {
    return SharedLog.read("log.csv", source, OPTIONS, RULES, now, mostHeld);
  }

  private static MeasuredCourse alone(Supplier<Reader> source, JointOrder order, Instant now)
      throws IOException {
    return JobLog.read("log.csv", source, OPTIONS, RULES, order, now).course();
  }

  private interface Asked {
    MeasuredCourse course() throws IOException;
  }

  /** Everything that is said, or refused; equal numbers only if equal to the last bit. */
  private static List<Object> said(Asked asked) throws IOException {
    MeasuredCourse course;
    try {
      course = asked.course();
    } catch (InputRefused e) {
      return List.copyOf(e.problems());
    }
    List<Object> all = new ArrayList<>(course.holes());
    all.add(course.until());
    all.add(course.plusMinusC());
    double end = 2.0 * course.until().toSeconds();
    pieces(course.history(), end, all);
    all.add(course.history().celsiusAt(end));
    return all;
  }

  private static void pieces(TemperatureHistory history, double until, List<Object> to) {
    history.forEachPiece(
        until, (from, fromC, end, endC) -> to.add(List.of(from, fromC, end, endC)));
  }

  /** Jobs begun before, within and between the readings, planned warm and cold. */
  private static List<JointOrder> jobs(Instant first, Instant last) {
    List<JointOrder> jobs = new ArrayList<>();
    long length = last.getEpochSecond() - first.getEpochSecond();
    for (int i = -1; i < 12; i++) {
      Instant start = first.plusSeconds(length * i / 12).plusMillis(i * 137L);
      double plannedC = 4 + (i + 1) * 2;
      jobs.add(DeskData.order(start.toString(), o -> o.put("temperatureC", plannedC)));
    }
    return jobs;
  }

  private static void assertSame(String name, Supplier<Reader> source) throws IOException {
    LoggerReading reading =
        LoggerCsv.read("log.csv", source, OPTIONS, RULES, () -> (a, b, c, d) -> {});
    long length = reading.last().getEpochSecond() - reading.first().getEpochSecond();
    int answers = 0;
    for (long later : List.of(-length / 3, 0L, 3600L, 9L * 3600)) {
      Instant now = reading.last().plusSeconds(later);
      SharedLog held = shared(source, now, PLENTY);
      SharedLog tooLong = shared(source, now, 1);
      assertEquals(reading, held.reading(), name);
      for (JointOrder job : jobs(reading.first(), now)) {
        List<Object> expected = said(() -> alone(source, job, now));
        assertEquals(expected, said(() -> held.course(job)), name + " " + job.start() + " " + now);
        assertEquals(expected, said(() -> tooLong.course(job)), name + " read anew");
        answers += expected.size() > 1 ? 1 : 0;
      }
    }
    assertTrue(answers > 20, name + ": " + answers + " jobs with an answer");
  }

  @Test
  void every_shape_of_log_says_the_same_of_each_job_as_when_read_for_it_alone() throws IOException {
    int read = 0;
    try (Stream<Path> files = Files.list(Path.of("demo-data/loggers"))) {
      for (Path file : files.filter(f -> f.toString().endsWith(".csv")).sorted().toList()) {
        assertSame(file.toString(), LoggerSource.of(file));
        read++;
      }
    }
    assertTrue(read > 5, read + " logs");
  }

  /** Random intervals: gaps, more than are listed; repeated times; jumps; both row orders. */
  @Test
  void gaps_steps_and_repeated_times_say_the_same() throws IOException {
    Random random = new Random(20270312);
    for (int turn = 0; turn < 2; turn++) {
      List<String> rows = new ArrayList<>();
      Instant at = Instant.parse("2027-03-12T16:00:00Z");
      int gaps = 0;
      for (int i = 0; i < 1000; i++) {
        rows.add(at + "," + (400 + random.nextInt(2000)) / 100.0 + "\n");
        int kind = random.nextInt(16);
        gaps += kind == 0 ? 1 : 0;
        int seconds = kind == 0 ? 5400 + random.nextInt(3) : kind < 4 ? 0 : 1 + random.nextInt(900);
        at = at.plusSeconds(seconds).plusMillis(random.nextInt(1000));
      }
      assertTrue(gaps > RULES.count("listed-most"), gaps + " gaps");
      if (turn % 2 == 1) {
        Collections.reverse(rows);
      }
      String text = "time,temperature (°C)\n" + String.join("", rows);
      assertSame("turn " + turn, () -> new StringReader(text));
    }
  }

  @Test
  void the_file_is_opened_as_often_for_many_jobs_as_for_none() throws IOException {
    String text = Files.readString(Path.of("demo-data/loggers/plain.csv"));
    List<Integer> opened = new ArrayList<>();
    Supplier<Reader> source =
        () -> {
          opened.add(1);
          return new StringReader(text);
        };
    Instant now = DeskData.at("2027-03-13T05:00");
    SharedLog log = shared(source, now, PLENTY);
    int before = opened.size();
    for (JointOrder job : jobs(log.reading().first(), now)) {
      log.course(job);
    }
    assertEquals(before, opened.size());
    shared(source, now, 1).course(jobs(log.reading().first(), now).get(0));
    assertTrue(opened.size() > 2 * before, "too long to be held, it is read anew");
  }

  @Test
  void a_job_that_the_log_does_not_reach_is_refused_in_the_same_words() throws IOException {
    Supplier<Reader> source = LoggerSource.of(Path.of("demo-data/loggers/plain.csv"));
    JointOrder june = DeskData.order("2027-06-12T12:00", o -> {});
    for (String now : List.of("2027-06-12T20:00", "2027-06-11T20:00")) {
      InputRefused expected =
          assertThrows(InputRefused.class, () -> alone(source, june, DeskData.at(now)));
      SharedLog log = shared(source, DeskData.at(now), PLENTY);
      InputRefused refused = assertThrows(InputRefused.class, () -> log.course(june));
      assertEquals(expected.problems(), refused.problems());
    }
  }
}
