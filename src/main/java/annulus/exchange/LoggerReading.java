package annulus.exchange;

import annulus.exchange.LoggerOptions.DateOrder;
import annulus.exchange.LoggerOptions.TemperatureUnit;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * How a logger's file was read. Lists are bounded; the counts are complete.
 *
 * @param file file name
 * @param delimiter cell delimiter
 * @param decimalMark decimal mark of the temperatures; empty when none had decimals
 * @param timeForm how the times are written
 * @param dateOrder order of day and month; empty when the form settles it
 * @param orderBasis why that order: declared, or what in the file tells
 * @param timesCarryZone true when the times carry their own offset or count from 1970
 * @param zone zone used for times that carry none
 * @param temperatureColumn header of the column read, or its number
 * @param unit unit of the temperatures
 * @param unitAssumed true when the file names no unit
 * @param newestFirst true when the file runs back in time
 * @param summerTimeKept true when the logger's clock was not put back in autumn and its times were
 *     read so
 * @param winterTimeKept true when the logger's clock was not put forward in spring and its times
 *     were read so
 * @param usualIntervalSeconds usual time between rows, s
 * @param gapLimitSeconds rows further apart than this are a gap, s
 * @param titleLines lines before the first reading
 * @param rowsRead readings used
 * @param rowsSkipped rows after the first reading that were not used
 * @param skipCounts how many for each reason
 * @param skipped the first of them
 * @param gapCount number of gaps
 * @param gapSeconds their total length, s
 * @param gaps the first of them
 * @param differing how many times have readings further apart than those of one probe, of which the
 *     coldest counts; 0 where they are too few to be told
 * @param differMostK how far apart they are at most, K
 * @param first time of the first reading
 * @param last time of the last reading
 */
public record LoggerReading(
    String file,
    char delimiter,
    Optional<Character> decimalMark,
    TimeForm timeForm,
    Optional<DateOrder> dateOrder,
    String orderBasis,
    boolean timesCarryZone,
    ZoneId zone,
    String temperatureColumn,
    TemperatureUnit unit,
    boolean unitAssumed,
    boolean newestFirst,
    boolean summerTimeKept,
    boolean winterTimeKept,
    double usualIntervalSeconds,
    double gapLimitSeconds,
    int titleLines,
    int rowsRead,
    int rowsSkipped,
    Map<SkipReason, Integer> skipCounts,
    List<Skipped> skipped,
    int gapCount,
    double gapSeconds,
    List<Gap> gaps,
    int differing,
    double differMostK,
    Instant first,
    Instant last) {
  public LoggerReading {
    skipCounts = Map.copyOf(skipCounts);
    skipped = List.copyOf(skipped);
    gaps = List.copyOf(gaps);
  }

  /** How the times are written. */
  public enum TimeForm {
    EPOCH_SECONDS,
    EPOCH_MILLISECONDS,
    YEAR_MONTH_DAY,
    MONTH_BY_NAME,
    DAY_AND_MONTH_AS_NUMBERS
  }

  /** Why a row was not used. */
  public enum SkipReason {
    NOT_A_READING("not a reading"),
    TIME_UNREADABLE("the time is not readable or out of range"),
    FAULT_VALUE("the sensor reports a fault"),
    POWER_ON_VALUE("the sensor's power-on value"),
    OUT_OF_RANGE("the temperature is out of the sensor's range"),
    BACK_IN_TIME("earlier than the row before"),
    REPEATED("the same time and temperature as the row before");

    private final String text;

    SkipReason(String text) {
      this.text = text;
    }

    /** The reason in words. */
    public String text() {
      return text;
    }
  }

  /** A row that was not used. */
  public record Skipped(int line, SkipReason reason) {}

  /**
   * A stretch without readings, taken as cold as its colder end or the floor.
   *
   * @param start last reading before
   * @param end first reading after
   * @param takenC temperature used, °C
   */
  public record Gap(Instant start, Instant end, double takenC) {}
}
