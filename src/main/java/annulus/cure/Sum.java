package annulus.cure;

/**
 * A sum that keeps what rounding drops, so that a week of one-second pieces adds up to the last
 * digits. Source: A. Neumaier, ZAMM 54 (1974), compensated summation, from memory.
 */
final class Sum {
  private double sum;
  private double dropped;

  void add(double value) {
    double next = sum + value;
    if (Math.abs(sum) >= Math.abs(value)) {
      dropped += (sum - next) + value;
    } else {
      dropped += (value - next) + sum;
    }
    sum = next;
  }

  double value() {
    return sum + dropped;
  }
}
