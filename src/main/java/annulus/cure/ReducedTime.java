package annulus.cure;

import annulus.quantity.Check;
import java.util.OptionalDouble;

/**
 * Reduced time of one history at one rate: hours at the reference temperature that do as much as
 * the history has done so far, and the time at which an amount is first reached.
 */
public final class ReducedTime {
  /**
   * A target is taken as reached when only this share of it is missing, so that rounding at the end
   * of a warm stretch does not push the answer past the cold one that follows.
   */
  private static final double ROUNDING = 1e-13;

  private final Stretch lead;
  private final Stretch cycle;
  private final double leadSeconds;
  private final double lastRatePerSecond;
  private final boolean repeats;

  public ReducedTime(TemperatureHistory history, Rate rate) {
    this.repeats = history.repeats();
    this.lead = new Stretch(history, rate, 0, history.leadEnd());
    this.cycle = new Stretch(history, rate, history.leadEnd(), history.size() - 1);
    this.leadSeconds = history.pointSeconds(history.leadEnd());
    this.lastRatePerSecond = rate.at(history.pointCelsius(history.size() - 1)) / 3600;
  }

  /**
   * Reduced time gathered up to a time.
   *
   * <p>{@code τ(t) = ∫₀ᵗ A(T(u)) du}
   *
   * @param seconds time since the start, s
   * @return reduced time, h at the reference temperature, to 1e-9 of the value
   *     <p>Valid for: the range of {@link Rate}; histories from −80 to 300 °C.
   *     <p>Source: equivalent age, ASTM C1074 (form), from memory.
   */
  public double hoursAt(double seconds) {
    Check.within("seconds", seconds, 0, Double.MAX_VALUE, "s");
    if (seconds <= leadSeconds) {
      return lead.hoursAt(seconds);
    }
    double rest = seconds - leadSeconds;
    if (!repeats) {
      return lead.hours() + rest * lastRatePerSecond;
    }
    double cycles = Math.floor(rest / cycle.seconds());
    double within = Math.max(0, rest - cycles * cycle.seconds());
    return lead.hours() + cycles * cycle.hours() + cycle.hoursAt(within);
  }

  /**
   * The earliest time at which an amount of reduced time is reached.
   *
   * @param hours reduced time wanted, h, 0 or more
   * @return time since the start, s, to 1e-6 s; empty when it is never reached
   *     <p>Valid for: as {@link #hoursAt}.
   *     <p>Source: inverse of {@link #hoursAt}.
   */
  public OptionalDouble secondsToReach(double hours) {
    Check.within("hours", hours, 0, Double.MAX_VALUE, "h");
    double wanted = hours * (1 - ROUNDING);
    if (wanted <= lead.hours()) {
      return OptionalDouble.of(lead.secondsToReach(wanted));
    }
    double rest = wanted - lead.hours();
    double gain = repeats ? cycle.hours() : lastRatePerSecond;
    if (gain <= 0) {
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(leadSeconds + (repeats ? inCycles(rest) : rest / lastRatePerSecond));
  }

  private double inCycles(double rest) {
    double cycles = Math.max(0, Math.ceil(rest / cycle.hours()) - 1);
    double missing = Math.min(rest - cycles * cycle.hours(), cycle.hours());
    return cycles * cycle.seconds() + cycle.secondsToReach(missing);
  }
}
