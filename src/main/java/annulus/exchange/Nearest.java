package annulus.exchange;

import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/** The known name nearest to a mistyped one. */
public final class Nearest {
  private static final int LONGEST = 100;
  private static final int SHORTEST_PART = 4;
  private static final int MOST_KIN = 5;
  private static final Pattern PARTS = Pattern.compile("-");

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

  /** The candidate that a word may be a slip of: at most two letters are other ones. */
  public static Optional<String> mistyped(String word, Collection<String> candidates) {
    return to(word, candidates).filter(n -> isMistyped(word, n));
  }

  /** A suggestion to print after "unknown", or all candidates when none is near. */
  public static String allowed(String word, Collection<String> candidates) {
    if (candidates.isEmpty()) {
      return "nothing here: there is none to name";
    }
    String all = String.join(", ", candidates);
    Optional<String> whole = mistyped(word, candidates);
    List<String> kin = whole.isPresent() ? List.of() : kin(word, candidates);
    Optional<String> near =
        kin.isEmpty() ? to(word, candidates) : Optional.of(String.join(" or ", kin));
    return near.map(n -> "did you mean " + n + "? one of: " + all).orElse(all);
  }

  private static boolean isMistyped(String word, String candidate) {
    return distance(word.toLowerCase(Locale.ROOT), candidate.toLowerCase(Locale.ROOT)) <= 2;
  }

  /** The few candidates that have the word as one of their parts: steel, bronce, micrometer. */
  private static List<String> kin(String word, Collection<String> candidates) {
    String lower = word.strip().toLowerCase(Locale.ROOT);
    if (lower.length() < SHORTEST_PART || lower.length() > LONGEST || lower.contains("-")) {
      return List.of();
    }
    List<String> kin =
        candidates.stream()
            .filter(c -> Arrays.stream(PARTS.split(c)).anyMatch(p -> isNearly(lower, p)))
            .toList();
    return kin.size() <= MOST_KIN ? kin : List.of();
  }

  private static boolean isNearly(String word, String part) {
    return part.length() >= SHORTEST_PART
        && distance(word, part.toLowerCase(Locale.ROOT)) <= (part.length() < 6 ? 0 : 1);
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
