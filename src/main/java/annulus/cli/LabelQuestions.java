package annulus.cli;

import annulus.exchange.CommandWords.Word;
import annulus.exchange.InputRefused;
import annulus.exchange.LabelSheet;
import annulus.exchange.PlacedProblem;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** Asks for what a label says, one line at a time; what can't be right is asked again. */
final class LabelQuestions {
  private static final Map<String, String> QUESTIONS = questions();

  private final BufferedReader in;
  private final PrintStream out;
  private final Map<String, Word> answers = new LinkedHashMap<>();

  LabelQuestions(InputStream in, PrintStream out) {
    this.in = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
    this.out = out;
  }

  /** Turns answers into a result, or refuses them. */
  @FunctionalInterface
  interface Attempt<T> {
    T of(Map<String, Word> answers);
  }

  private static Map<String, String> questions() {
    Map<String, String> q = new LinkedHashMap<>();
    q.put("class", "An id for it, small letters and dashes, such as shop-blend");
    q.put("name", "What the shop calls it");
    q.put("like", "Which class is it most like (such as medium-lasting)");
    q.put("gap_basis", "Does the label count gaps per side (radial) or across (diametral)");
    q.put("largest_gap_um", "Largest gap, µm on that basis");
    q.put("smallest_gap_um", "Smallest gap, µm on that basis (empty if it does not say)");
    q.put("fixture_minutes", "Minutes to fixture");
    q.put("full_hours", "Hours to full cure");
    q.put("at_c", "At which temperature, °C");
    q.put("surface", "On which faces: active (steel, brass) or slow (stainless, aluminium)");
    q.put("at_gap_um", "At which gap, µm on that basis");
    q.put("strength_mpa", "Shear strength on steel pin and collar, MPa (N/mm²)");
    q.put("service_low_c", "Lowest service temperature, °C");
    q.put("service_high_c", "Highest service temperature, °C");
    q.put("least_cure_c", "Least temperature it cures at, °C");
    q.put("open_months", "Months it keeps once opened");
    q.put("shelf_months", "Months it keeps unopened (empty if it does not say)");
    return q;
  }

  /** Asks everything, then again what the attempt refuses. */
  <T> T ask(Attempt<T> attempt) throws IOException {
    for (String column : LabelSheet.COLUMNS) {
      ask(column);
    }
    while (true) {
      try {
        return attempt.of(answers);
      } catch (InputRefused e) {
        Set<String> wrong =
            e.problems().stream()
                .map(PlacedProblem::field)
                .filter(QUESTIONS::containsKey)
                .collect(Collectors.toCollection(java.util.LinkedHashSet::new));
        if (wrong.isEmpty()) {
          throw e;
        }
        for (PlacedProblem problem : e.problems()) {
          out.println(problem.field() + ": " + problem.problem() + "; " + problem.allowed());
        }
        for (String column : wrong) {
          ask(column);
        }
      }
    }
  }

  private void ask(String column) throws IOException {
    out.print(QUESTIONS.get(column) + ": ");
    out.flush();
    String line = in.readLine();
    if (line == null) {
      out.println();
      throw new InputRefused(
          List.of(
              new PlacedProblem("typed in", 0, 0, column, "the answers end here", "an answer")));
    }
    answers.remove(column);
    if (!line.isBlank()) {
      answers.put(column, new Word(column, line.strip(), 0));
    }
  }
}
