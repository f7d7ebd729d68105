package annulus.bench;

import java.util.Arrays;
import java.util.Locale;

/**
 * One line of the table.
 *
 * @param work what was done
 * @param took how long or how much, with its unit
 * @param compared what it was compared with
 * @param against how long or how much that took
 * @param ratio the one over the other, as wanted
 * @param wanted such as {@code <= 5}
 * @param met whether it is
 */
record Line(
    String work,
    String took,
    String compared,
    String against,
    String ratio,
    String wanted,
    String met) {

  /** A cost that may be at most so many times another. */
  static Line most(
      String work, double took, String compared, double against, double most, String unit) {
    double ratio = took / against;
    return of(work, took, compared, against, ratio, unit)
        .wanting("<= " + plain(most), ratio <= most);
  }

  /** A cost that another must be at least so many times of. */
  static Line least(
      String work, double took, String compared, double against, double least, String unit) {
    double ratio = against / took;
    return of(work, took, compared, against, ratio, unit)
        .wanting(">= " + plain(least), ratio >= least);
  }

  /** A figure without a target. */
  static Line figure(String work, String took) {
    return new Line(work, took, "", "", "", "", "");
  }

  /** A figure beside another, without a target. */
  static Line beside(String work, double took, String compared, double against, String unit) {
    return of(work, took, compared, against, took / against, unit);
  }

  private static Line of(
      String work, double took, String compared, double against, double ratio, String unit) {
    String one = figure(took) + " " + unit;
    String other = figure(against) + " " + unit;
    return new Line(work, one, compared, other, figure(ratio), "", "");
  }

  private Line wanting(String target, boolean isMet) {
    return new Line(work, took, compared, against, ratio, target, isMet ? "yes" : "NO");
  }

  static String figure(double x) {
    int digits = Math.abs(x) >= 100 ? 0 : Math.abs(x) >= 10 ? 1 : 2;
    return String.format(Locale.ROOT, "%." + digits + "f", x);
  }

  private static String plain(double x) {
    return x == Math.rint(x)
        ? String.format(Locale.ROOT, "%.0f", x)
        : String.format(Locale.ROOT, "%.1f", x);
  }

  static double median(double... values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int middle = sorted.length / 2;
    return sorted.length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
  }

  /** A row of a Markdown table. */
  String markdown() {
    return "| " + String.join(" | ", work, took, compared, against, ratio, wanted, met) + " |";
  }
}
