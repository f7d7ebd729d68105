package annulus.measure;

/** Mean and standard deviation, stable for large values with a small spread. */
final class Sample {
  private Sample() {}

  static double mean(double... values) {
    double first = sum(values, 0) / values.length;
    return first + sum(values, first) / values.length;
  }

  /** With n − 1 in the divisor (JCGM 100:2008, equation (4)); 0 for one value. */
  static double standardDeviation(double... values) {
    if (values.length < 2) {
      return 0;
    }
    return Math.sqrt(squares(values) / (values.length - 1));
  }

  /** Sum of the squared deviations from the mean. */
  static double squares(double... values) {
    double mean = mean(values);
    double sum = 0;
    for (double v : values) {
      sum += (v - mean) * (v - mean);
    }
    return sum;
  }

  static double range(double... values) {
    double low = values[0];
    double high = low;
    for (double v : values) {
      low = Math.min(low, v);
      high = Math.max(high, v);
    }
    return high - low;
  }

  private static double sum(double[] values, double offset) {
    double sum = 0;
    for (double v : values) {
      sum += v - offset;
    }
    return sum;
  }
}
