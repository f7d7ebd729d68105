package annulus.exchange;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.lifecycle.AfterContainer;
import net.jqwik.api.lifecycle.BeforeContainer;

/** Whatever a damaged table holds, it is taken or refused with a place; nothing else happens. */
class BrokenTablePropertyTest {
  private static Path folder;
  private static int taken;
  private static int refused;

  /** A change at a share of the length: bytes cut, and other bytes put in their place. */
  record Damage(double share, int cut, String latin1) {
    byte[] applied(byte[] bytes) {
      byte[] put = latin1.getBytes(StandardCharsets.ISO_8859_1);
      int at = (int) (share * bytes.length);
      int end = Math.min(bytes.length, at + cut);
      byte[] result = new byte[bytes.length - (end - at) + put.length];
      System.arraycopy(bytes, 0, result, 0, at);
      System.arraycopy(put, 0, result, at, put.length);
      System.arraycopy(bytes, end, result, at + put.length, bytes.length - end);
      return result;
    }
  }

  @BeforeContainer
  static void open() throws IOException {
    folder = Files.createTempDirectory("shop");
  }

  @AfterContainer
  static void both_outcomes_were_seen() throws IOException {
    for (String table : ShopFolder.TABLES) {
      Files.deleteIfExists(folder.resolve(table));
    }
    Files.delete(folder);
    assertTrue(taken > 20, taken + " damaged tables were taken");
    assertTrue(refused > 200, refused + " damaged tables were refused");
  }

  @Provide
  Arbitrary<List<Damage>> damages() {
    Arbitrary<String> odd =
        Arbitraries.of(
                "", ",", ";", "\"", "\n", "\r", "#", "{", "}", "[", "]", ":", "-", "0", "9",
                "1e999", "NaN", "null", "true", "\\u0000", "\uFEFF", "ı", "µ", " ", "x")
            .map(s -> new String(s.getBytes(StandardCharsets.UTF_8), StandardCharsets.ISO_8859_1));
    Arbitrary<String> any =
        Arbitraries.strings().withCharRange('\0', '\u00FF').ofMinLength(1).ofMaxLength(3);
    return Combinators.combine(
            Arbitraries.integers().between(0, 99_999).map(n -> n / 1e5),
            Arbitraries.frequencyOf(
                net.jqwik.api.Tuple.of(8, Arbitraries.integers().between(0, 4)),
                net.jqwik.api.Tuple.of(1, Arbitraries.integers().between(0, 5000))),
            Arbitraries.oneOf(odd, any))
        .as(Damage::new)
        .list()
        .ofMinSize(1)
        .ofMaxSize(3);
  }

  @Provide
  Arbitrary<String> tables() {
    return Arbitraries.of(ShopFolder.TABLES);
  }

  @Property(tries = 2000, seed = "20261125", shrinking = ShrinkingMode.BOUNDED)
  void a_damaged_shop_table_is_taken_or_refused_with_a_place(
      @ForAll("tables") String table, @ForAll("damages") List<Damage> damages) throws IOException {
    byte[] bytes = damaged(table, damages);
    Files.write(folder.resolve(table), bytes);
    try {
      assertTrue(new ShopFolder(folder).read(table) != null);
      taken++;
    } catch (InputRefused e) {
      refused++;
      assertFalse(e.problems().isEmpty());
      for (PlacedProblem problem : e.problems()) {
        assertTrue(problem.file().endsWith(table), problem.toString());
        assertTrue(problem.line() > 0, problem.toString());
        assertFalse(problem.problem().isBlank(), problem.toString());
        assertFalse(problem.allowed().isBlank(), problem.toString());
        assertFalse(problem.toString().contains("\n"), problem.toString());
        assertFalse(problem.toString().contains("Exception"), problem.toString());
      }
    } finally {
      Files.delete(folder.resolve(table));
    }
  }

  @Property(tries = 1000, seed = "20261126", shrinking = ShrinkingMode.BOUNDED)
  void a_damaged_handbook_table_is_taken_or_refused_with_its_file(
      @ForAll("handbook") String table, @ForAll("damages") List<Damage> damages) {
    String text = new String(damaged(table, damages), StandardCharsets.UTF_8);
    try {
      readHandbook(table, text);
    } catch (InputRefused e) {
      for (PlacedProblem problem : e.problems()) {
        assertTrue(problem.file().contains("data/" + table), problem.toString());
        assertFalse(problem.problem().isBlank(), problem.toString());
        assertFalse(problem.allowed().isBlank(), problem.toString());
      }
    }
  }

  @Provide
  Arbitrary<String> handbook() {
    return Arbitraries.of(
        "iso286-grades.csv",
        "iso286-deviations.csv",
        "bearing-normal.csv",
        "friction.csv",
        "press-factors.csv",
        "hold-factors.csv",
        "duty-cases.csv");
  }

  private static void readHandbook(String table, String text) {
    StringReader reader = new StringReader(text);
    String file = "data/" + table;
    switch (table) {
      case "iso286-grades.csv" ->
          Iso286Files.tables(
              file, reader, "d", new StringReader(ShopFolder.shipped("iso286-deviations.csv")));
      case "iso286-deviations.csv" ->
          Iso286Files.tables(
              "g", new StringReader(ShopFolder.shipped("iso286-grades.csv")), file, reader);
      case "bearing-normal.csv" -> Iso286Files.bearings(file, reader);
      case "friction.csv" -> PressFiles.friction(file, reader);
      case "hold-factors.csv" -> HoldFiles.factors(file, reader);
      case "duty-cases.csv" -> {
        StringReader factors = new StringReader(ShopFolder.shipped("hold-factors.csv"));
        HoldFiles.duties(file, reader, HoldFiles.factors("data/hold-factors.csv", factors));
      }
      default -> PressFiles.factors(file, reader);
    }
  }

  private static byte[] damaged(String table, List<Damage> damages) {
    byte[] bytes = ShopFolder.shipped(table).getBytes(StandardCharsets.UTF_8);
    for (Damage damage : damages) {
      bytes = damage.applied(bytes);
    }
    return bytes;
  }
}
