package annulus.exchange;

import annulus.exchange.LoggerOptions.TemperatureUnit;
import annulus.quantity.Numbers;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** How a logger's file was read, in words, so that a wrong reading is seen. */
public final class ReadingText {
  private static final DateTimeFormatter CLOCK =
      DateTimeFormatter.ofPattern("EEE uuuu-MM-dd HH:mm", Locale.ENGLISH);

  private ReadingText() {}

  /**
   * One line.
   *
   * @param r how it was read
   * @param zone zone of the times that are printed
   */
  public static String of(LoggerReading r, ZoneId zone) {
    StringBuilder text = new StringBuilder(r.file() + ": ");
    text.append(r.rowsRead()).append(" readings from ").append(clock(r.first(), zone));
    text.append(" to ").append(clock(r.last(), zone));
    text.append(", usually every ").append(interval(r.usualIntervalSeconds()));
    text.append("; column \"").append(r.temperatureColumn()).append("\" in ");
    text.append(r.unit() == TemperatureUnit.CELSIUS ? "°C" : "°F");
    text.append(r.unitAssumed() ? " (taken so, the file names none)" : "");
    text.append(r.timesCarryZone() ? "" : "; times taken as of " + r.zone());
    text.append(r.summerTimeKept() ? "; the logger's clock was not put back in autumn" : "");
    text.append(r.winterTimeKept() ? "; the logger's clock was not put forward in spring" : "");
    text.append(r.newestFirst() ? "; newest row first" : "");
    r.dateOrder()
        .ifPresent(
            o -> text.append("; ").append(Fields.word(o)).append(": ").append(r.orderBasis()));
    if (r.rowsSkipped() > 0) {
      text.append("; ").append(r.rowsSkipped()).append(" rows not used");
    }
    if (r.differing() > 0) {
      text.append("; at ").append(r.differing());
      text.append(" times the column has readings up to ")
          .append(Numbers.fixed(r.differMostK(), 1));
      text.append(" K apart, probably of two probes: the colder counts");
    }
    return text.toString();
  }

  static String clock(Instant instant, ZoneId zone) {
    return CLOCK.format(instant.atZone(zone));
  }

  private static String interval(double seconds) {
    return seconds < 120
        ? Numbers.fixed(seconds, 0) + " s"
        : Numbers.fixed(seconds / 60, 0) + " min";
  }
}
