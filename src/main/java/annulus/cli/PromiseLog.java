package annulus.cli;

import annulus.advice.JointOrder;
import annulus.exchange.DataFiles;
import annulus.exchange.JobLog;
import annulus.exchange.LogWords;
import annulus.exchange.LoggerAhead;
import annulus.exchange.LoggerOptions;
import annulus.exchange.LoggerReading;
import annulus.exchange.LoggerRules;
import annulus.exchange.LoggerSource;
import annulus.exchange.SharedLog;
import java.io.IOException;
import java.io.PrintStream;
import java.io.Reader;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * The temperature log that {@code --log} names. One that runs past the present is refused; past a
 * moment that {@code --now} names it may have been read out later, so that it is only warned of.
 *
 * @param words of the command
 * @param zone the shop's, for a file whose times carry none
 * @param files the data tables
 * @param now when jobs are judged
 * @param err where a warning goes
 */
record PromiseLog(Words words, ZoneId zone, DataFiles files, Instant now, PrintStream err) {
  /** The log of one running job; empty when none is named. */
  Optional<JobLog> of(JointOrder order) throws IOException {
    Optional<Named> named = named();
    if (named.isEmpty()) {
      return Optional.empty();
    }
    JobLog log = named.get().of(order);
    compareClocks(log.reading(), named.get().rules());
    return Optional.of(log);
  }

  /** The log of a list; what is wrong with it is told once, before any row. */
  Optional<SharedLog> ofList() throws IOException {
    Optional<Named> named = named();
    if (named.isEmpty()) {
      return Optional.empty();
    }
    SharedLog log = named.get().ofAll();
    compareClocks(log.reading(), named.get().rules());
    return Optional.of(log);
  }

  private void compareClocks(LoggerReading reading, LoggerRules rules) {
    if (words.value("--now").isEmpty()) {
      LoggerAhead.refuse(reading, now, rules, zone);
      return;
    }
    LoggerAhead.of(reading, now, rules, zone)
        .ifPresent(
            p ->
                err.println(
                    "WARNING: " + p.file() + ": unless it was read out later, " + p.problem()));
  }

  /** The file, its encoding told once, with what is needed to read it for any job. */
  private record Named(
      String file, Supplier<Reader> source, LoggerOptions options, LoggerRules rules, Instant now) {
    JobLog of(JointOrder order) throws IOException {
      return JobLog.read(file, source, options, rules, order, now);
    }

    SharedLog ofAll() throws IOException {
      return SharedLog.read(file, source, options, rules, now);
    }
  }

  private Optional<Named> named() throws IOException {
    Optional<Path> file = words.value("--log").map(InputFile::of);
    if (file.isEmpty()) {
      return Optional.empty();
    }
    Supplier<Reader> source = LoggerSource.of(file.get());
    LoggerOptions options = options();
    LoggerRules rules = LoggerRules.read(files);
    return Optional.of(new Named(file.get().toString(), source, options, rules, now));
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
