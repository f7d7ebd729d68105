package annulus.exchange;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/** The known name nearest to a mistyped one. */
public final class Nearest {
  private static final int LONGEST = 100;

  private Nearest() {}

  /** The nearest candidate, if it shares at least about half its letters with the word. */
  static Optional<String> to(String word, Collection<String> candidates) {
    if (word.length() > LONGEST) {
      return Optional.empty();
    }
    String best = null;
    int bestDistance = Integer.MAX_VALUE;
    for (String candidate : candidates) {
      int distance = distance(word.toLowerCase(Locale.ROOT), candidate.toLowerCase(Locale.ROOT));
      if (distance < bestDistance) {
        bestDistance = distance;
        best = candidate;
      }
    }
    boolean near = best != null && bestDistance <= Math.max(2, best.length() / 2);
    return near ? Optional.of(best) : Optional.empty();
  }

  /** A suggestion to print after "unknown", or all candidates when none is near. */
  public static String allowed(String word, Collection<String> candidates) {
    if (candidates.isEmpty()) {
      return "nothing here: there is none to name";
    }
    String all = String.join(", ", candidates);
    return to(word, candidates).map(n -> "did you mean " + n + "? one of: " + all).orElse(all);
  }

  private static int distance(String a, String b) {
    int[] row = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      row[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      int diagonal = row[0];
      row[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int substitute = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        diagonal = row[j];
        row[j] = Math.min(substitute, 1 + Math.min(row[j], row[j - 1]));
      }
    }
    return row[b.length()];
  }
}
