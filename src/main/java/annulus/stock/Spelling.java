package annulus.stock;

import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * Numbers that one person writes this way and the next another way. A recall must not miss a job
 * because of a capital letter, a hyphen, a zero in front, or the {@code -2} that a second container
 * of the same lot gets.
 */
public final class Spelling {
  private static final Pattern CONTAINER = Pattern.compile("-[1-9]$");
  private static final Pattern MARKS = Pattern.compile("[^\\p{L}\\p{N}]+");
  private static final Pattern ZEROS = Pattern.compile("^0+(?=.)");

  private Spelling() {}

  /** The other numbers that may stand for the same lot or the same job, sorted. */
  public static List<String> alike(String number, Collection<String> others) {
    return others.stream()
        .filter(o -> !o.equals(number) && same(number, o))
        .distinct()
        .sorted()
        .toList();
  }

  private static boolean same(String a, String b) {
    return bare(a).equals(bare(b)) || bare(lot(a)).equals(bare(lot(b)));
  }

  private static String lot(String number) {
    return CONTAINER.matcher(number.strip()).replaceFirst("");
  }

  private static String bare(String number) {
    String letters = MARKS.matcher(number.toUpperCase(Locale.ROOT)).replaceAll("");
    return letters.isEmpty() ? number : ZEROS.matcher(letters).replaceFirst("");
  }
}
