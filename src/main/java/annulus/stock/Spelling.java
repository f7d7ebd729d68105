package annulus.stock;

import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Numbers that one person writes this way and the next another way. A recall must not miss a job
 * because of a capital letter, a hyphen, a zero in front, or the {@code -2}, {@code -10}, {@code
 * /2} or {@code (2)} that a further container of the same lot gets.
 */
public final class Spelling {
  /**
   * A number with a digit before its mark: T-12 and T-13 are two lots, K2-12 and K2-13 may be one.
   */
  private static final Pattern CONTAINER =
      Pattern.compile("^(.*\\p{N}.*?)[^\\p{L}\\p{N}]+0*[0-9]{1,3}[^\\p{L}\\p{N}]*$");

  private static final Pattern PART = Pattern.compile("^(.*)-[1-9]$");
  private static final Pattern MARKS = Pattern.compile("[^\\p{L}\\p{N}]+");
  private static final Pattern ZEROS = Pattern.compile("^0+(?=.)");

  private Spelling() {}

  /** The other numbers that may stand for the same lot, sorted. */
  public static List<String> alike(String number, Collection<String> others) {
    return alike(number, others, CONTAINER);
  }

  /** The other references that may stand for the same job, sorted. */
  public static List<String> jobsAlike(String job, Collection<String> others) {
    return alike(job, others, PART);
  }

  /** Two references may stand for the same job exactly if they share one of these. */
  static Set<String> keysOfJob(String job) {
    return Set.of("all " + bare(job), "whole " + bare(whole(job, PART)));
  }

  private static List<String> alike(String number, Collection<String> others, Pattern part) {
    return others.stream()
        .filter(o -> !o.equals(number) && same(number, o, part))
        .distinct()
        .sorted()
        .toList();
  }

  private static boolean same(String a, String b, Pattern part) {
    return bare(a).equals(bare(b)) || bare(whole(a, part)).equals(bare(whole(b, part)));
  }

  private static String whole(String number, Pattern part) {
    return part.matcher(number.strip()).replaceFirst("$1");
  }

  private static String bare(String number) {
    String letters = MARKS.matcher(number.toUpperCase(Locale.ROOT)).replaceAll("");
    return letters.isEmpty() ? number : ZEROS.matcher(letters).replaceFirst("");
  }
}
