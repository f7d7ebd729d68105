package annulus.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.exchange.Damage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Whole commands with words left out, doubled, mixed up and odd, and with harmed files: an answer,
 * a no, or a clear error; never a fault of the program, and no file written but those named.
 */
class CommandFuzzTest {
  private static final List<List<String>> COMMANDS =
      List.of(
          List.of("advise", "ORDER", "--why"),
          List.of("advise", "ORDER", "--json", "--card", "OUT.html", "--stock", "STOCK"),
          List.of("advise", "--bore", "42.04", "--part", "41.98", "--engagement", "11"),
          List.of("advise", "--radial-gap-um", "40", "--diameter", "30", "--temp", "18"),
          List.of("advise", "--batch", "JOBS", "--out", "OUT.csv"),
          List.of(
              "promise", "ORDER", "--shop", "SHOP", "--options", "--wanted", "2027-03-13T17:30"),
          List.of(
              "promise", "ORDER", "--shop", "SHOP", "--log", "LOG", "--now", "2027-03-12T12:00"),
          List.of("promise", "--list", "JOBS", "--shop", "SHOP", "--now", "2027-03-12T12:00"),
          List.of("promise", "ORDER", "--shop", "SHOP", "--ics", "OUT.ics", "--tag", "OUT.html"),
          List.of("learn", "OBSERVATIONS"),
          List.of("sources", "ORDER"),
          List.of("fit", "35 H7", "35 k6", "--bore", "35.012", "--measured-at", "21"),
          List.of("fit", "40 H7/s6", "--picture", "OUT.svg"),
          List.of("stock", "check", "STOCK", "--on", "2027-03-11", "--within", "30"),
          List.of("stock", "plan", "STOCK", "--jobs", "JOBS"),
          List.of("stock", "tag", "STOCK", "--lot", "007", "--out", "OUT.html"),
          List.of("stock", "use", "--ledger", "LEDGER", "--lot", "007", "--ml", "1", "--who", "A"),
          List.of("stock", "recall", "--ledger", "LEDGER", "--lot", "007"),
          List.of("stock", "export", "STOCK", "--ledger", "LEDGER", "--out", "OUT.csv"));

  private static final Map<String, String> INPUTS =
      new TreeMap<>(
          Map.of(
              "ORDER", "demo-data/orders/02-good-fit-primed.json",
              "JOBS", "demo-data/jobs.csv",
              "SHOP", "demo-data/shop.json",
              "STOCK", "demo-data/stock.csv",
              "LOG", "demo-data/loggers/plain.csv",
              "OBSERVATIONS", "demo-data/observations.csv"));

  @TempDir Path folder;

  /** Each case writes into a folder of its own, so that one leaves nothing for the next. */
  private String[] words(Random random, Path own) throws IOException {
    List<String> words = new ArrayList<>(COMMANDS.get(random.nextInt(COMMANDS.size())));
    for (int i = Math.max(0, random.nextInt(5) - 2); i > 0; i--) {
      int at = 1 + random.nextInt(words.size() - 1);
      boolean output = words.get(at).startsWith("OUT");
      switch (random.nextInt(4)) {
        case 0 -> words.remove(at);
        case 1 -> words.add(at, words.get(at));
        case 2 -> words.set(at, output ? "OUT" : Damage.oddWord(random));
        default -> words.add(at, words.remove(random.nextInt(words.size() - 1) + 1));
      }
      if (words.size() < 2) {
        words.add("ORDER");
      }
    }
    for (int i = 0; i < words.size(); i++) {
      String word = words.get(i);
      if (word.startsWith("OUT") || word.equals("LEDGER")) {
        words.set(i, own.resolve(word).toString());
      } else if (INPUTS.containsKey(word)) {
        byte[] bytes = Files.readAllBytes(Path.of(INPUTS.get(word)));
        byte[] given = random.nextInt(3) > 0 ? bytes : Damage.done(List.of(bytes), random);
        Path file = own.resolve(word);
        Files.write(file, given);
        words.set(i, file.toString());
      }
    }
    return words.toArray(new String[0]);
  }

  /** After an option for a file to write, an odd word could be a path anywhere. */
  private static boolean writesElsewhere(String[] words, Path own) {
    for (int i = 0; i + 1 < words.length; i++) {
      boolean writes =
          List.of("--card", "--out", "--ics", "--tag", "--picture", "--ledger").contains(words[i]);
      if (writes && !words[i + 1].startsWith(own.toString())) {
        return true;
      }
    }
    return false;
  }

  @Test
  void any_command_is_answered_or_refused_in_words() throws IOException {
    Map<Integer, Integer> codes = new TreeMap<>();
    int cases = 400 * Math.min(Damage.TIMES, 100);
    int tried = 0;
    for (int i = 0; i < cases; i++) {
      Random random = new Random(7_000_000_000L + i);
      Path own = Files.createDirectory(folder.resolve("c" + i));
      String[] words = words(random, own);
      if (writesElsewhere(words, own)) {
        continue;
      }
      tried++;
      CliRun run = CliRun.of(words);
      String what = "case " + i + " " + List.of(words) + "\n" + run.err();
      assertTrue(run.code() >= 0 && run.code() <= 2, what);
      if (run.code() == 2) {
        assertFalse(run.err().isBlank(), what);
        run.err().lines().forEach(l -> assertTrue(l.length() <= 2000 && !l.isBlank(), what));
      }
      assertFalse((run.out() + run.err()).contains("annulus."), what);
      codes.merge(run.code(), 1, Integer::sum);
    }
    System.out.println("fuzz commands: " + tried + " cases, by exit code " + codes);
    assertEquals(3, codes.size(), codes.toString());
    assertTrue(codes.get(0) > tried / 20 && codes.get(2) > tried / 5, codes.toString());
  }
}
