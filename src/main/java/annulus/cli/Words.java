package annulus.cli;

import annulus.exchange.CommandWords.Word;
import annulus.exchange.InputRefused;
import annulus.exchange.Nearest;
import annulus.exchange.PlacedProblem;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * The words after a command: options with a value, flags, and the rest. Written by hand because a
 * command-line library more than doubles the start-up time of a call at the bench.
 */
final class Words {
  private final List<Word> options = new ArrayList<>();
  private final List<String> rest = new ArrayList<>();

  /**
   * Sorts the words.
   *
   * @param args all words; the command is the first
   * @param withValue options that take a value, as the next word or after {@code =}
   * @param flags options that stand alone
   * @throws InputRefused for an unknown option, a missing value or one given twice
   */
  Words(String[] args, Set<String> withValue, Set<String> flags) {
    for (int i = 1; i < args.length; i++) {
      String word = args[i];
      int equals = word.indexOf('=');
      String name = word.startsWith("--") && equals > 0 ? word.substring(0, equals) : word;
      if (!word.startsWith("-")) {
        rest.add(word);
      } else if (flags.contains(word)) {
        add(word, "true", i + 1);
      } else if (flags.contains(name)) {
        throw refused(i + 1, name, "takes no value", name + " alone, or not at all");
      } else if (!withValue.contains(name)) {
        throw refused(
            i + 1,
            name,
            "is not an option of " + args[0],
            Nearest.allowed(name, known(withValue, flags)));
      } else if (!name.equals(word)) {
        add(name, word.substring(equals + 1), i + 1);
      } else if (i + 1 < args.length && !args[i + 1].startsWith("--")) {
        add(name, args[++i], i + 1);
      } else {
        throw refused(i + 1, name, "has no value", "a value after it");
      }
    }
  }

  private static List<String> known(Set<String> withValue, Set<String> flags) {
    return Stream.of(withValue, flags).flatMap(Set::stream).sorted().toList();
  }

  private void add(String name, String value, int position) {
    if (value(name).isPresent()) {
      throw refused(position, name, "stands twice", "each option once");
    }
    options.add(new Word(name, value, position));
  }

  static InputRefused refused(int position, String field, String problem, String allowed) {
    return new InputRefused(
        List.of(new PlacedProblem("command line", 0, position, field, problem, allowed)));
  }

  /** The refusal of an option, with its place where it is there. */
  InputRefused refused(String option, String problem, String allowed) {
    int position = among(List.of(option)).stream().findFirst().map(Word::position).orElse(0);
    return refused(position, option, problem, allowed);
  }

  Optional<String> value(String name) {
    for (Word word : options) {
      if (word.option().equals(name)) {
        return Optional.of(word.value());
      }
    }
    return Optional.empty();
  }

  boolean has(String name) {
    return value(name).isPresent();
  }

  /** Options whose name is in the list. */
  List<Word> among(List<String> names) {
    List<Word> among = new ArrayList<>();
    for (Word word : options) {
      if (names.contains(word.option())) {
        among.add(word);
      }
    }
    return among;
  }

  /** Words that are no options, such as file names. */
  List<String> rest() {
    return List.copyOf(rest);
  }
}
