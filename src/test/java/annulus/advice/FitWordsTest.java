package annulus.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

class FitWordsTest {
  /** The rule reader and the rule schema repeat these words. */
  @Test
  void a_fit_is_clear_line_to_line_or_interference() {
    assertEquals(
        List.of("clear", "line-to-line", "interference"),
        Arrays.stream(FitBelief.Kind.values())
            .map(f -> f.name().toLowerCase(Locale.ROOT).replace('_', '-'))
            .toList());
  }
}
