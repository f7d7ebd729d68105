package annulus.exchange;

import annulus.cure.PieceConsumer;
import annulus.exchange.LoggerReading.SkipReason;
import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Supplier;

/**
 * Reads a temperature logger's CSV file of any common shape. A pass over the whole file finds how
 * it is to be read; the linear temperature pieces are given in the same pass as the first lines say
 * it is to be read, and once more in a second pass where the whole file says otherwise. Memory
 * stays bounded; only a file with the newest row first is held, as plain numbers, up to a stated
 * length.
 *
 * <p>The power-on value of a common chip sensor (85 °C) counts only after a reading close to it, so
 * that one at the start or alone among others is a fault. Rows of one time count as the coldest.
 */
public final class LoggerCsv {
  private static final int SAMPLE_LINES = 500;
  private static final int FIRST_CAPACITY = 4096;

  private final String file;
  private final Supplier<Reader> source;
  private final LoggerRules rules;
  private final LoggerOptions options;
  private final LoggerValue values;
  private final double earliestYear;
  private final double latestYear;

  private LoggerCsv(
      String file, Supplier<Reader> source, LoggerOptions options, LoggerRules rules) {
    this.file = file;
    this.source = source;
    this.rules = rules;
    this.options = options;
    this.values = new LoggerValue(rules);
    this.earliestYear = rules.value("earliest-year");
    this.latestYear = rules.value("latest-year");
  }

  /**
   * Reads a file.
   *
   * @param file its name, for messages
   * @param source opens it anew; called up to three times
   * @param options what the user declares
   * @param rules limits
   * @param pieces makes what takes the pieces in the order of time, in seconds since 1970 UTC and
   *     °C; called up to two times, and only what was made last holds the file
   * @return how the file was read
   * @throws InputRefused when the file can't be read without guessing; pieces already given must
   *     then be dropped
   * @throws IOException when reading fails
   */
  public static LoggerReading read(
      String file,
      Supplier<Reader> source,
      LoggerOptions options,
      LoggerRules rules,
      Supplier<? extends PieceConsumer> pieces)
      throws IOException {
    try {
      return new LoggerCsv(file, source, options, rules).read(pieces);
    } catch (CharacterCodingException e) {
      throw new InputRefused(
          List.of(new PlacedProblem(file, 0, 0, "", "is not text in the encoding used", "UTF-8")));
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  private LoggerReading read(Supplier<? extends PieceConsumer> consumers) throws IOException {
    List<String> sample = sample();
    LoggerLayout layout = LoggerLayouts.find(file, sample, options);
    LoggerSurvey survey = new LoggerSurvey(file, layout, options, rules);
    Optional<LoggerSurvey.Plan> draft = draft(layout, sample);
    LoggerPieces pieces = null;
    if (draft.isPresent()) {
      LoggerSurvey.Plan plan = draft.get();
      LoggerPieces tried = new LoggerPieces(plan, options, rules, consumers.get());
      forEachLine(
          layout,
          (number, cells) -> {
            survey.line(number, cells);
            row(layout, plan, tried, number, cells, tried::row);
          });
      tried.closeGroup();
      pieces = tried;
    } else {
      forEachLine(layout, survey::line);
    }
    LoggerSurvey.Plan plan = survey.plan();
    if (!draft.equals(Optional.of(plan))) {
      pieces = pieces(layout, plan, consumers.get());
    }
    if (pieces.read() < 2) {
      throw new InputRefused(
          List.of(
              new PlacedProblem(
                  file, 0, 0, "", "has fewer than two usable readings", "two or more")));
    }
    return pieces.reading(file, layout, plan);
  }

  /** How the first lines alone say that the file is to be read, oldest row first. */
  private Optional<LoggerSurvey.Plan> draft(LoggerLayout layout, List<String> sample) {
    LoggerSurvey survey = new LoggerSurvey(file, layout, options, rules);
    for (int i = 0; i < sample.size(); i++) {
      survey.line(i + 1, layout.cells(LoggerLine.of(sample.get(i))));
    }
    try {
      return Optional.of(survey.plan()).filter(p -> !p.newestFirst());
    } catch (InputRefused e) {
      return Optional.empty();
    }
  }

  private LoggerPieces pieces(LoggerLayout layout, LoggerSurvey.Plan plan, PieceConsumer consumer)
      throws IOException {
    LoggerPieces pieces = new LoggerPieces(plan, options, rules, consumer);
    if (plan.newestFirst()) {
      Held held = new Held(rules.count("newest-first-rows-most"));
      forEachLine(layout, (number, cells) -> row(layout, plan, pieces, number, cells, held));
      held.oldestFirst(pieces);
    } else {
      forEachLine(layout, (number, cells) -> row(layout, plan, pieces, number, cells, pieces::row));
    }
    pieces.closeGroup();
    return pieces;
  }

  private List<String> sample() throws IOException {
    List<String> sample = new ArrayList<>();
    try (LoggerLines lines = new LoggerLines(file, source.get())) {
      LoggerLine line = lines.next();
      while (line != null && sample.size() < SAMPLE_LINES) {
        sample.add(line.text());
        line = lines.next();
      }
    }
    return sample;
  }

  private void forEachLine(LoggerLayout layout, LinesAhead.LineConsumer consumer)
      throws IOException {
    try (LoggerLines lines = new LoggerLines(file, source.get())) {
      LinesAhead.forEach(lines, layout, consumer);
    }
  }

  private void row(
      LoggerLayout layout,
      LoggerSurvey.Plan plan,
      LoggerPieces pieces,
      int line,
      LoggerLayout.Cells cells,
      RowConsumer rows) {
    if (line <= layout.titleLines() || cells.line().isBlank()) {
      return;
    }
    LoggerStamp stamp = cells.stamp();
    if (stamp == null) {
      pieces.skip(line, SkipReason.NOT_A_READING);
      return;
    }
    OptionalLong time = stamp.millis(plan.orderOrAny());
    if (time.isEmpty() || !yearIsUsable(stamp)) {
      pieces.skip(line, SkipReason.TIME_UNREADABLE);
      return;
    }
    LoggerNumber number = cells.temperature();
    SkipReason refused = refused(layout, number, cells.line(), plan);
    if (refused != null) {
      pieces.skip(line, refused);
      return;
    }
    rows.row(line, time.getAsLong(), LoggerValue.celsius(number.value(), plan.unit()));
  }

  private SkipReason refused(
      LoggerLayout layout, LoggerNumber number, LoggerLine line, LoggerSurvey.Plan plan) {
    boolean fault =
        !number.isNumber() && LoggerValue.isFaultWord(layout.temperatureText(line.text()));
    return fault ? SkipReason.FAULT_VALUE : values.refuse(number, plan.unit());
  }

  private boolean yearIsUsable(LoggerStamp stamp) {
    boolean counted = stamp.year() == 0;
    return counted || (stamp.year() >= earliestYear && stamp.year() <= latestYear);
  }

  /** Takes a row whose temperature is within range. */
  private interface RowConsumer {
    void row(int line, long millis, double celsius);
  }

  /** The rows of a file with the newest first, as plain numbers. */
  private final class Held implements RowConsumer {
    private final int most;
    private int[] lines = new int[FIRST_CAPACITY];
    private long[] millis = new long[FIRST_CAPACITY];
    private double[] celsius = new double[FIRST_CAPACITY];
    private int size;

    Held(int most) {
      this.most = most;
    }

    @Override
    public void row(int line, long time, double temperature) {
      if (size == most) {
        throw new InputRefused(
            List.of(
                new PlacedProblem(
                    file,
                    line,
                    0,
                    "",
                    "the newest row comes first and the file is too long to be turned round",
                    "at most " + most + " rows, or the oldest row first")));
      }
      if (size == lines.length) {
        int wider = Math.min(most, size * 2);
        lines = Arrays.copyOf(lines, wider);
        millis = Arrays.copyOf(millis, wider);
        celsius = Arrays.copyOf(celsius, wider);
      }
      lines[size] = line;
      millis[size] = time;
      celsius[size++] = temperature;
    }

    void oldestFirst(LoggerPieces pieces) {
      for (int i = size - 1; i >= 0; i--) {
        pieces.row(lines[i], millis[i], celsius[i]);
      }
    }
  }
}
