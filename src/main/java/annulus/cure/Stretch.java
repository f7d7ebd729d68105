package annulus.cure;

/** Running totals of reduced time over a stretch of a history's points; time from its own start. */
final class Stretch {
  private final Rate rate;
  private final double[] seconds;
  private final double[] celsius;
  private final double[] hours;

  Stretch(TemperatureHistory history, Rate rate, int first, int last) {
    int size = last - first + 1;
    this.rate = rate;
    this.seconds = new double[size];
    this.celsius = new double[size];
    this.hours = new double[size];
    Sum sum = new Sum();
    for (int i = 0; i < size; i++) {
      seconds[i] = history.pointSeconds(first + i) - history.pointSeconds(first);
      celsius[i] = history.pointCelsius(first + i);
      if (i > 0) {
        double length = seconds[i] - seconds[i - 1];
        sum.add(PieceIntegral.hours(rate, length, celsius[i - 1], celsius[i]));
      }
      hours[i] = i == 0 ? 0 : Math.max(hours[i - 1], sum.value());
    }
  }

  double seconds() {
    return seconds[seconds.length - 1];
  }

  double hours() {
    return hours[hours.length - 1];
  }

  double hoursAt(double at) {
    int after = firstAtLeast(seconds, at);
    if (after == 0 || after == seconds.length) {
      return after == 0 ? 0 : hours();
    }
    int before = after - 1;
    double length = seconds[after] - seconds[before];
    double part = at - seconds[before];
    double hereC = celsius[before] + (celsius[after] - celsius[before]) * (part / length);
    double gathered = PieceIntegral.hours(rate, part, celsius[before], hereC);
    return Math.min(hours[after], hours[before] + gathered);
  }

  double secondsToReach(double wantedHours) {
    int after = firstAtLeast(hours, wantedHours);
    if (after == 0) {
      return 0;
    }
    if (after == hours.length) {
      return seconds();
    }
    int before = after - 1;
    return seconds[before]
        + PieceInverse.secondsToReach(
            rate,
            seconds[after] - seconds[before],
            celsius[before],
            celsius[after],
            wantedHours - hours[before]);
  }

  private static int firstAtLeast(double[] rising, double value) {
    int index = 0;
    int end = rising.length;
    while (index < end) {
      int middle = (index + end) >>> 1;
      if (rising[middle] >= value) {
        end = middle;
      } else {
        index = middle + 1;
      }
    }
    return index;
  }
}
