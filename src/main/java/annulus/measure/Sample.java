package annulus.measure;

import java.util.List;

/** Mean and standard deviation, stable for large values with a small spread. */
final class Sample {
  private Sample() {}

  static double mean(List<Double> values) {
    double first = sum(values, 0) / values.size();
    return first + sum(values, first) / values.size();
  }

  /** With n − 1 in the divisor (JCGM 100:2008, equation (4)); 0 for one value. */
  static double standardDeviation(List<Double> values) {
    if (values.size() < 2) {
      return 0;
    }
    return Math.sqrt(squares(values) / (values.size() - 1));
  }

  /** Sum of the squared deviations from the mean. */
  static double squares(List<Double> values) {
    double mean = mean(values);
    double sum = 0;
    for (double v : values) {
      sum += (v - mean) * (v - mean);
    }
    return sum;
  }

  static double range(List<Double> values) {
    double low = values.get(0);
    double high = low;
    for (double v : values) {
      low = Math.min(low, v);
      high = Math.max(high, v);
    }
    return high - low;
  }

  private static double sum(List<Double> values, double offset) {
    double sum = 0;
    for (double v : values) {
      sum += v - offset;
    }
    return sum;
  }
}
