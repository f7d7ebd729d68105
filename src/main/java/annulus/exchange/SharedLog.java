package annulus.exchange;

import annulus.advice.ColdSteps;
import annulus.advice.JointOrder;
import annulus.advice.MeasuredCourse;
import annulus.cure.PieceConsumer;
import java.io.IOException;
import java.io.Reader;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;

/**
 * A logger's file that any number of running jobs lay beside: read once for all of them, and of
 * each it says what {@link JobLog} says that reads it for that one alone. Memory stays bounded: a
 * log longer than can be held is read anew for each job. May be asked from several threads.
 */
public final class SharedLog {
  private final String file;
  private final Supplier<Reader> source;
  private final LoggerOptions options;
  private final LoggerRules rules;
  private final Instant now;
  private final LoggerReading reading;
  private final HeldPieces held;

  private SharedLog(
      String file,
      Supplier<Reader> source,
      LoggerOptions options,
      LoggerRules rules,
      Instant now,
      LoggerReading reading,
      HeldPieces held) {
    this.file = file;
    this.source = source;
    this.options = options;
    this.rules = rules;
    this.now = now;
    this.reading = reading;
    this.held = held;
  }

  /**
   * Reads a log.
   *
   * @param file its name, for messages
   * @param source opens it anew
   * @param options what the user declares, without a floor: each job sets its own
   * @param rules limits
   * @param now the log is cut here
   * @throws InputRefused when the file can't be read
   * @throws IOException when reading fails
   */
  public static SharedLog read(
      String file, Supplier<Reader> source, LoggerOptions options, LoggerRules rules, Instant now)
      throws IOException {
    return read(file, source, options, rules, now, (long) rules.value("shared-readings-most"));
  }

  static SharedLog read(
      String file,
      Supplier<Reader> source,
      LoggerOptions options,
      LoggerRules rules,
      Instant now,
      long mostHeld)
      throws IOException {
    List<HeldPieces> made = new ArrayList<>();
    LoggerReading reading =
        LoggerCsv.read(
            file,
            source,
            options,
            rules,
            () -> {
              made.clear(); // what the first try gave is dropped before the second begins
              made.add(new HeldPieces(mostHeld));
              return made.get(0);
            });
    return new SharedLog(file, source, options, rules, now, reading, made.get(0));
  }

  /** How the file was read. */
  public LoggerReading reading() {
    return reading;
  }

  /** Whether it can say anything of a job: it goes on after the joint was closed. */
  public boolean reaches(JointOrder order) {
    return order.start().isBefore(reading.last());
  }

  /**
   * What it says of a running job.
   *
   * @throws InputRefused when it has no reading from the start of the joint until now
   * @throws IOException when the file must be read anew and can't be
   */
  public MeasuredCourse course(JointOrder order) throws IOException {
    if (held.tooLong()) {
      return JobLog.read(file, source, options, rules, order, now).course();
    }
    JobSpan span = JobSpan.of(file, options.zone(), order, now);
    ColdSteps steps = span.steps();
    held.between(span.fromSeconds(), span.untilSeconds(), gapsAtMost(span.floorC(), steps));
    return span.course(steps, reading, rules.plusMinusC());
  }

  /** Gaps, told by their length as when the file was read, taken no warmer than a job's floor. */
  private PieceConsumer gapsAtMost(double floorC, PieceConsumer consumer) {
    return (startSeconds, startC, endSeconds, endC) -> {
      long millis = Math.round(endSeconds * 1000) - Math.round(startSeconds * 1000);
      boolean gap = millis / 1000.0 > reading.gapLimitSeconds();
      double mostC = gap ? floorC : Double.POSITIVE_INFINITY;
      consumer.piece(startSeconds, Math.min(startC, mostC), endSeconds, Math.min(endC, mostC));
    };
  }
}
