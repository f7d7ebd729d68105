package annulus.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is wrong with the name of a file is told with that name. */
class InputFileTest {
  private static final String SHOP = " --shop demo-data/shop.json";

  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "advise demo-data",
        "advise --batch demo-data --out results.csv",
        "sources demo-data",
        "promise demo-data" + SHOP,
        "promise demo-data/orders/01-good-fit.json --shop demo-data",
        "promise demo-data/orders/01-good-fit.json --log demo-data" + SHOP,
        "promise --list demo-data" + SHOP,
        "learn demo-data",
        "stock check demo-data",
        "stock plan demo-data --jobs demo-data/jobs.csv",
        "stock plan demo-data/stock.csv --jobs demo-data",
        "stock cover demo-data",
        "stock receive --ledger new-ledger --from demo-data --who Ines",
        "stock use --ledger demo-data --lot 007 --ml 1 --who Ines",
        "stock import --ledger demo-data --from README.md",
        "stock label --data src --from demo-data",
        "restore demo-data",
        "serve --stock demo-data --port 0",
      })
  void a_folder_given_for_a_file_is_told_by_its_name(String words) {
    CliRun run = CliRun.of(words.split(" "));
    assertEquals(2, run.code());
    assertEquals("demo-data: is a folder; allowed: the name of a file\n", run.err());
    assertFalse(Files.exists(Path.of("new-ledger")));
  }

  @Test
  void a_ledger_in_a_folder_that_is_not_there_is_told_the_folder() {
    Path nowhere = folder.resolve("nowhere");
    String ledger = nowhere.resolve("ledger").toString();
    CliRun run =
        CliRun.of(
            "stock",
            "receive",
            "--ledger",
            ledger,
            "--from",
            "demo-data/stock.csv",
            "--who",
            "Ines");
    assertEquals(2, run.code());
    assertEquals(
        "command line:4: --ledger: there is no folder "
            + nowhere
            + "; allowed: a ledger in a folder that is there\n",
        run.err());
    assertTrue(Files.notExists(nowhere));
  }
}
