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
                .filter(LabelSheet.COLUMNS::contains)
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
    out.print(LabelSheet.question(column) + ": ");
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
