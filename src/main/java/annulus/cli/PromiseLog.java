package annulus.cli;

import annulus.advice.JointOrder;
import annulus.exchange.DataFiles;
import annulus.exchange.JobLog;
import annulus.exchange.LogWords;
import annulus.exchange.LoggerCsv;
import annulus.exchange.LoggerOptions;
import annulus.exchange.LoggerReading;
import annulus.exchange.LoggerRules;
import annulus.exchange.LoggerSource;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;

/**
 * The temperature log that {@code --log} names.
 *
 * @param words of the command
 * @param zone the shop's, for a file whose times carry none
 * @param files the data tables
 * @param now when jobs are judged
 */
record PromiseLog(Words words, ZoneId zone, DataFiles files, Instant now) {
  /** The log of one running job; empty when none is named. */
  Optional<JobLog> of(JointOrder order) throws IOException {
    Optional<Path> file = file();
    if (file.isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.of(
          JobLog.read(
              file.get().toString(),
              LoggerSource.of(file.get()),
              options(),
              LoggerRules.read(files),
              order,
              now));
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  /** The log of a list; what is wrong with it is told once, before any row. */
  Optional<ListLog> ofList() throws IOException {
    Optional<Path> file = file();
    if (file.isEmpty()) {
      return Optional.empty();
    }
    LoggerReading reading =
        LoggerCsv.read(
            file.get().toString(),
            LoggerSource.of(file.get()),
            options(),
            LoggerRules.read(files),
            () -> (fromSeconds, fromC, toSeconds, toC) -> {});
    return Optional.of(new ListLog(reading, order -> of(order).orElseThrow()));
  }

  private Optional<Path> file() {
    return words.value("--log").map(Path::of);
  }

  private LoggerOptions options() {
    return LogWords.options(
        zone,
        words.value("--date-order"),
        words.value("--unit"),
        words.value("--column"),
        new LogWords.Place("command line", "--date-order", "--unit"));
  }
}
