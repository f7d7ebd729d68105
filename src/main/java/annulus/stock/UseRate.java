package annulus.stock;

import annulus.quantity.Check;
import annulus.quantity.Interval;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;

/**
 * How fast something is used.
 *
 * @param uses how many uses were recorded
 * @param days over how many days
 * @param mlPerUse mean amount of a use, mL
 * @param sdPerUse standard deviation of that amount, mL
 * @param usesPerDay limits of the rate of uses, 1/day
 */
public record UseRate(
    long uses, double days, double mlPerUse, double sdPerUse, Interval usesPerDay) {

  /**
   * The rate the ledger shows.
   *
   * @param ledger all movements
   * @param item id of the class or primer
   * @param today last day that counts
   * @param windowDays how far back movements count, days
   * @param level two-sided level of the limits, 0 to 1
   * @return empty when no use was recorded
   */
  public static Optional<UseRate> of(
      Ledger ledger, String item, LocalDate today, double windowDays, double level) {
    LocalDate from = today.minusDays((long) windowDays);
    List<Movement> known =
        ledger.movements().stream()
            .filter(m -> item.equals(ledger.itemOf(m.lot()).orElse("")))
            .filter(m -> m.kind().moves() && !m.day().isAfter(today))
            .filter(m -> m.takesBack().isEmpty() && !ledger.isTakenBack(m))
            .toList();
    List<Double> amounts =
        known.stream()
            .filter(m -> m.kind() == Movement.Kind.USE && m.day().isAfter(from))
            .map(m -> m.amount().value())
            .toList();
    if (amounts.isEmpty()) {
      return Optional.empty();
    }
    LocalDate first = known.stream().map(Movement::day).min(LocalDate::compareTo).orElseThrow();
    double days = Math.min(windowDays, ChronoUnit.DAYS.between(first, today) + 1.0);
    return Optional.of(of(amounts, days, level));
  }

  static UseRate of(List<Double> amounts, double days, double level) {
    long n = amounts.size();
    double mean = amounts.stream().mapToDouble(a -> a).average().orElseThrow();
    double squares = amounts.stream().mapToDouble(a -> (a - mean) * (a - mean)).sum();
    double sd = n > 1 ? Math.sqrt(squares / (n - 1)) : mean;
    Interval counts = countLimits(n, level);
    return new UseRate(n, days, mean, sd, new Interval(counts.low() / days, counts.high() / days));
  }

  /**
   * Limits of a Poisson mean of which {@code n} were counted.
   *
   * <p>{@code low = chi2(a/2; 2n)/2, high = chi2(1 - a/2; 2n + 2)/2, a = 1 - level}
   *
   * @param n events counted
   * @param level two-sided level, 0.5 to 0.999
   * @return limits, events
   *     <p>Valid for: independent events.
   *     <p>Source: Garwood, Biometrika 28 (1936), from memory.
   */
  public static Interval countLimits(long n, double level) {
    Check.within("level", level, 0.5, 0.999, "");
    double tail = (1 - level) / 2;
    double low =
        n == 0 ? 0 : ChiSquaredDistribution.of(2.0 * n).inverseCumulativeProbability(tail) / 2;
    double high = ChiSquaredDistribution.of(2.0 * n + 2).inverseSurvivalProbability(tail) / 2;
    return new Interval(low, high);
  }

  /** Mean use, mL/day. */
  public double mlPerDay() {
    return uses / days * mlPerUse;
  }

  /** Limits of the use, mL/day, from those of the rate of uses. */
  public Interval mlPerDayLimits() {
    return new Interval(usesPerDay.low() * mlPerUse, usesPerDay.high() * mlPerUse);
  }

  /**
   * Standard deviation of a day's use when uses come at random.
   *
   * <p>{@code sqrt(rate (m^2 + s^2))}
   *
   * @return mL/day
   *     <p>Valid for: a compound Poisson process.
   *     <p>Source: variance of a compound Poisson sum, standard result.
   */
  public double sdPerDay() {
    return Math.sqrt(uses / days * (mlPerUse * mlPerUse + sdPerUse * sdPerUse));
  }
}
