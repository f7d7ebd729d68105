package annulus.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import annulus.advice.Knowledge;
import annulus.fit.PressFactors;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TablesAsCodeTest {
  @Test
  void what_the_build_made_of_the_tables_is_what_they_say() throws Exception {
    List<Object> read = TablesAsCode.all(DataFiles.bundled());
    List<Object> built = new ArrayList<>();
    for (Object each : read) {
      built.add(BuiltTables.of(each.getClass()).orElseThrow());
    }
    assertEquals(read, built);
    assertEquals(TablesAsCode.of(read), TablesAsCode.of(built), "also the order of the rows");
  }

  @Test
  void another_number_is_other_code() throws Exception {
    Knowledge read = KnowledgeFiles.readFiles(DataFiles.bundled());
    PressFactors press = read.press();
    PressFactors swapped =
        new PressFactors(
            press.bearingClearanceLoss(), press.slipClearance(), press.smoothingLoss());
    Knowledge other =
        new Knowledge(
            read.catalog(),
            read.rules(),
            read.hold(),
            read.friction(),
            swapped,
            read.bearings(),
            read.duties(),
            read.warmUp());
    assertNotEquals(TablesAsCode.of(List.of(read)), TablesAsCode.of(List.of(other)));
  }

  @Test
  void a_shop_folder_is_read_from_its_files(@TempDir Path folder) throws IOException {
    Files.writeString(folder.resolve("friction.csv"), "pair,method\n");
    DataFiles files = DataFiles.withShop(folder);
    assertThrows(InputRefused.class, () -> KnowledgeFiles.read(files));
  }
}
