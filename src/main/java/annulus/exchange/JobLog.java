package annulus.exchange;

import annulus.advice.ColdSteps;
import annulus.advice.JointOrder;
import annulus.advice.MeasuredCourse;
import java.io.IOException;
import java.io.Reader;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;

/**
 * A logger's file read as the course of one running job: cut to the time from the start of the
 * joint until now, in bounded memory. What lies between the start and the first reading, between
 * readings far apart, and between the last reading and now counts as the colder of the readings
 * beside it and the coldest of the plan.
 *
 * @param reading how the file was read
 * @param course what it says of the job
 */
public record JobLog(LoggerReading reading, MeasuredCourse course) {
  /**
   * Reads a log.
   *
   * @param file its name, for messages
   * @param source opens it anew
   * @param options what the user declares; the floor of gaps is set here
   * @param rules limits
   * @param order the running job, its cure as planned
   * @param now the log is cut here
   * @throws InputRefused when the file can't be read, or has no reading in that time
   * @throws IOException when reading fails
   */
  public static JobLog read(
      String file,
      Supplier<Reader> source,
      LoggerOptions options,
      LoggerRules rules,
      JointOrder order,
      Instant now)
      throws IOException {
    JobSpan span = JobSpan.of(file, options.zone(), order, now);
    List<ColdSteps> made = new ArrayList<>();
    LoggerReading reading =
        LoggerCsv.read(
            file,
            source,
            options.withFloor(span.floorC()),
            rules,
            () -> {
              made.add(span.steps());
              return made.get(made.size() - 1);
            });
    MeasuredCourse course = span.course(made.get(made.size() - 1), reading, rules.plusMinusC());
    return new JobLog(reading, course);
  }
}
