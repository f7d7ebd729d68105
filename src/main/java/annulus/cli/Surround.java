package annulus.cli;

import java.time.Clock;
import java.time.ZoneId;

/**
 * What a command takes from the machine it runs on.
 *
 * @param clock for orders without a start
 * @param zone for orders without a zone
 */
record Surround(Clock clock, ZoneId zone) {
  static Surround ofThisMachine() {
    return new Surround(Clock.systemUTC(), ZoneId.systemDefault());
  }
}
