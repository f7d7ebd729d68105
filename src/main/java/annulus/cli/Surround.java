package annulus.cli;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.function.Supplier;

/**
 * What a command takes from the machine it runs on.
 *
 * @param clock for orders without a start
 * @param zoneWhenAsked for orders without a zone
 */
record Surround(Clock clock, Supplier<ZoneId> zoneWhenAsked) {
  Surround(Clock clock, ZoneId zone) {
    this(clock, () -> zone);
  }

  static Surround ofThisMachine() {
    return new Surround(Clock.systemUTC(), ZoneId::systemDefault);
  }

  /** The day on this machine's calendar. */
  LocalDate today() {
    return LocalDate.ofInstant(clock.instant(), zone());
  }

  ZoneId zone() {
    return zoneWhenAsked.get();
  }
}
