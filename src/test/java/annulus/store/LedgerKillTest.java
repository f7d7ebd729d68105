package annulus.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.stock.Ledger;
import annulus.stock.Millilitres;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Processes of their own that write the ledger, killed without warning or run side by side. */
class LedgerKillTest {
  private static final int ROUNDS = 24;

  @TempDir Path folder;

  private Process child(Path ledger, String name, int count) throws IOException {
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    return new ProcessBuilder(
            java,
            "-XX:TieredStopAtLevel=1",
            "-Xshare:auto",
            "-cp",
            System.getProperty("java.class.path"),
            LedgerChild.class.getName(),
            ledger.toString(),
            name,
            Integer.toString(count))
        .redirectError(ProcessBuilder.Redirect.INHERIT)
        .redirectOutput(said(name).toFile())
        .start();
  }

  private Path said(String name) {
    return folder.resolve("said-" + name);
  }

  /** Whole lines of what a child said; an id cut off in the middle was not said. */
  private List<String> confirmed(String name) throws IOException {
    String text = Files.readString(said(name), StandardCharsets.UTF_8);
    return text.substring(0, text.lastIndexOf('\n') + 1).lines().toList();
  }

  @Test
  void every_confirmed_movement_outlives_a_kill_at_any_moment() throws Exception {
    Path file = folder.resolve("ledger");
    new LedgerFile(file).append(LedgerChild.receive(1000));
    Set<String> confirmed = new HashSet<>();
    Random random = new Random(20261125);
    for (int round = 0; round < ROUNDS; round++) {
      confirmed.addAll(killed(file, "round" + round, random));
      Ledger ledger = new LedgerFile(file).read().ledger();
      for (String id : confirmed) {
        assertTrue(ledger.has(id), "round " + round + " lost " + id);
      }
      long unconfirmed = ledger.movements().size() - 1L - confirmed.size();
      assertTrue(unconfirmed >= 0 && unconfirmed <= round + 1L, "at most one each: " + unconfirmed);
      assertEquals(
          Millilitres.of(1000 - 0.001 * (ledger.movements().size() - 1)), ledger.left("007"));
    }
    assertTrue(confirmed.size() >= ROUNDS, "each round confirmed at least one");
  }

  /** Waits for some confirmations and a little more, kills, and collects all that was said. */
  private List<String> killed(Path file, String name, Random random) throws Exception {
    Process child = child(file, name, 1_000_000);
    int wanted = 1 + random.nextInt(12);
    while (child.isAlive() && confirmed(name).size() < wanted) {
      Thread.sleep(1);
    }
    Thread.sleep(random.nextInt(4), random.nextInt(999_999));
    child.destroyForcibly();
    child.waitFor();
    return confirmed(name);
  }

  @Test
  void two_tills_at_once_lose_nothing() throws Exception {
    Path file = folder.resolve("ledger");
    new LedgerFile(file).append(LedgerChild.receive(10));
    Process a = child(file, "a", 150);
    Process b = child(file, "b", 150);
    assertEquals(0, a.waitFor());
    assertEquals(0, b.waitFor());
    assertEquals(150, confirmed("a").size());
    assertEquals(150, confirmed("b").size());
    LedgerFile.Reading reading = new LedgerFile(file).read();
    assertTrue(reading.torn().isEmpty());
    assertEquals(301, reading.ledger().movements().size());
    assertEquals(Millilitres.of(9.7), reading.ledger().left("007"));
  }
}
