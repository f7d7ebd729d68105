package annulus.cli;

import annulus.advice.JointOrder;
import annulus.exchange.JobLog;
import annulus.exchange.LoggerReading;
import java.io.IOException;

/**
 * A log that all running jobs of a list lay beside.
 *
 * @param reading how it was read
 * @param of reads it for one of them
 */
record ListLog(LoggerReading reading, ForJob of) {
  /** Reads the log for a job. */
  @FunctionalInterface
  interface ForJob {
    JobLog read(JointOrder order) throws IOException;
  }

  /** Whether it can say anything of a job: it goes on after the joint was closed. */
  boolean reaches(JointOrder order) {
    return order.start().isBefore(reading.last());
  }
}
