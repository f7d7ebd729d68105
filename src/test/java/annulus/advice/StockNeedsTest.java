package annulus.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.catalog.CompoundClass;
import annulus.catalog.Policy;
import annulus.exchange.CommandWords;
import annulus.exchange.CommandWords.Word;
import annulus.exchange.DataFiles;
import annulus.exchange.KnowledgeFiles;
import annulus.exchange.OrderReader;
import annulus.exchange.StockFiles;
import annulus.stock.Cabinet;
import annulus.stock.Cover;
import annulus.stock.CoverAxes;
import annulus.stock.CoverCell;
import annulus.stock.Lots;
import annulus.stock.Millilitres;
import annulus.stock.Need;
import annulus.stock.StockItem;
import java.io.IOException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

class StockNeedsTest {
  private static Knowledge knowledge;
  private static Policy policy;
  private static CoverAxes axes;

  @BeforeAll
  static void tables() throws IOException {
    DataFiles files = DataFiles.bundled();
    knowledge = KnowledgeFiles.read(files);
    policy = StockFiles.policy(files);
    axes = StockFiles.cover(files);
  }

  private static JointOrder order(String gapUm, String... more) {
    List<Word> words = new ArrayList<>();
    String[] said = {
      "--radial-gap-um", gapUm, "--radial-gap-plus-minus-um", "2", "--diameter", "42",
      "--engagement", "11", "--materials", "steel-plain,steel-bearing", "--temp", "20",
      "--start", "2026-11-25T09:00", "--zone", "Europe/Dublin", "--job", "J1"
    };
    for (int i = 0; i < said.length; i += 2) {
      words.add(new Word(said[i], said[i + 1], i + 1));
    }
    for (int i = 0; i < more.length; i += 2) {
      words.add(new Word(more[i], more[i + 1], i + 40));
    }
    OrderReader reader =
        new OrderReader(knowledge, Instant.parse("2026-11-25T08:00:00Z"), ZoneOffset.UTC);
    return CommandWords.order(reader, words);
  }

  private static Cabinet cabinet(String... items) {
    Map<String, StockItem> all = StockItem.all(knowledge.catalog(), policy);
    List<annulus.stock.Lot> lots = new ArrayList<>();
    for (String item : items) {
      lots.add(Lots.sealed("L" + lots.size(), item, 50, Lots.DAY.plusYears(1)));
    }
    return new Cabinet(lots, all);
  }

  private static StockNeeds needs() {
    return new StockNeeds(new Advisor(knowledge), policy);
  }

  @Test
  void the_best_comes_first_and_then_what_the_cabinet_has_in_the_rules_order() {
    Need need = needs().of(order("35"), 2, Lots.DAY, cabinet("medium-lasting", "medium-hot"));
    List<String> items = need.options().stream().map(Need.Option::item).toList();
    assertEquals("thin-lasting", items.get(0));
    assertEquals(List.of("medium-lasting", "medium-hot"), items.subList(1, items.size()));
    assertEquals(Lots.DAY, need.day());
  }

  /** Ring of 42 mm, 11 mm long, 35 µm and what it may be more, twice: about 0.1 mL. */
  @Test
  void the_draw_is_that_of_the_ring_with_waste() {
    Need need = needs().of(order("35"), 2, Lots.DAY, cabinet());
    double film = 35 + 2;
    double ring = Math.PI * (42 - film / 1000) * film / 1000 * 11 / 1000;
    double waste = knowledge.catalog().policy().value("waste-factor");
    assertEquals(ring * waste, need.options().get(0).amount().value(), 0.002);
    assertEquals(Millilitres.NONE, need.options().get(0).primerAmount());
  }

  @Test
  void a_job_that_needs_no_compound_wants_nothing() {
    Need need = needs().of(order("-25"), 2, Lots.DAY, cabinet("thin-lasting"));
    assertTrue(need.options().isEmpty());
    assertEquals("press dry", need.answer());
  }

  @Test
  void a_primer_counts_as_drawn_only_while_it_is_not_on_the_part() {
    Cabinet cabinet = cabinet("thin-lasting", "primer-solvent");
    Need fresh = needs().of(order("35", "--primer", "primer-solvent"), 2, Lots.DAY, cabinet);
    assertEquals("primer-solvent", fresh.options().get(0).primer().orElseThrow());
    assertTrue(fresh.options().get(0).primerAmount().isPositive());
    Need on =
        needs()
            .of(
                order("35", "--primer", "primer-solvent", "--primer-minutes", "30"),
                2,
                Lots.DAY,
                cabinet);
    assertTrue(on.options().get(0).primer().isEmpty());
  }

  @Test
  void the_cabinet_is_preferred_and_what_is_not_in_date_does_not_count() {
    StockNeeds.Preferred preferred =
        needs().prefer(order("35"), Lots.DAY, cabinet("medium-lasting"));
    assertTrue(preferred.cabinetWillDo());
    assertFalse(preferred.sameChoice());
    assertEquals("medium-lasting", preferred.inStock().decision().compound().orElseThrow().id());
    assertFalse(needs().prefer(order("35"), Lots.DAY, cabinet()).cabinetWillDo());
    assertFalse(
        needs()
            .prefer(order("35"), Lots.DAY.plusYears(2), cabinet("medium-lasting"))
            .cabinetWillDo());
    assertTrue(needs().prefer(order("35"), Lots.DAY, cabinet("thin-lasting")).sameChoice());
  }

  private static Cabinet with(annulus.stock.Lot... lots) {
    return new Cabinet(List.of(lots), StockItem.all(knowledge.catalog(), policy));
  }

  private static annulus.stock.Lot rest(String lot, String item, double ml) {
    return Lots.sealed(lot, item, 50, Lots.DAY.plusYears(1)).withLeft(Millilitres.of(ml));
  }

  @Test
  void a_rest_too_small_for_the_joint_is_not_offered() {
    StockNeeds.Preferred alone =
        needs().prefer(order("35"), Lots.DAY, with(rest("T1", "medium-lasting", 0.001)));
    assertFalse(alone.cabinetWillDo());
    assertEquals("medium-lasting", alone.tooLittle().get(0).item());
    StockNeeds.Preferred other =
        needs()
            .prefer(
                order("35"),
                Lots.DAY,
                with(rest("T1", "medium-lasting", 0.001), rest("T2", "medium-hot", 50)));
    assertEquals("medium-hot", other.draw().orElseThrow().item());
    StockNeeds.Preferred primer =
        needs()
            .prefer(
                order("35", "--primer", "primer-solvent"),
                Lots.DAY,
                with(rest("T1", "thin-lasting", 50), rest("P1", "primer-solvent", 0.001)));
    assertFalse(primer.cabinetWillDo(), "the order insists on the primer");
    assertEquals(
        List.of("primer-solvent"),
        primer.tooLittle().stream().map(StockNeeds.TooLittle::item).distinct().toList());
  }

  @Test
  void every_served_joint_of_the_survey_is_a_yes_of_the_whole_rule_book() {
    List<CoverCell> cells = CoverSurvey.cells(knowledge, policy, axes);
    assertEquals(
        2 * axes.services().size() * axes.surfaces().size() * axes.gaps().size(), cells.size());
    Set<String> compounds = knowledge.catalog().compounds().keySet();
    Set<String> primers = knowledge.catalog().primers().keySet();
    for (CoverCell cell : cells) {
      for (Set<String> way : cell.alternatives()) {
        List<String> classes = way.stream().filter(compounds::contains).toList();
        assertEquals(1, classes.size());
        CompoundClass compound = knowledge.catalog().compounds().get(classes.get(0));
        assertEquals(
            cell.releasable(), compound.permanence() == CompoundClass.Permanence.RELEASABLE);
        assertTrue(way.size() == 1 || way.stream().anyMatch(primers::contains));
      }
    }
  }

  @Test
  void two_inert_faces_are_served_only_with_a_primer() {
    List<CoverCell> cells = CoverSurvey.cells(knowledge, policy, axes);
    List<CoverCell> inert =
        cells.stream()
            .filter(c -> c.surfaces().equals("inert-inert") && c.service().equals("sun"))
            .filter(CoverCell::possible)
            .toList();
    assertFalse(inert.isEmpty());
    for (CoverCell cell : inert) {
      assertFalse(cell.servedBy(knowledge.catalog().compounds().keySet()));
      assertTrue(cell.servedBy(StockItem.all(knowledge.catalog(), policy).keySet()));
    }
  }

  @Test
  void a_cabinet_with_everything_has_no_hole_and_an_empty_one_serves_nothing() {
    List<CoverCell> cells = CoverSurvey.cells(knowledge, policy, axes);
    Set<String> all = StockItem.all(knowledge.catalog(), policy).keySet();
    assertTrue(new Cover(cells, all).holes().isEmpty());
    Cover empty = new Cover(cells, Set.of());
    assertEquals(0, empty.served());
    Set<String> fewest = empty.fewest();
    assertTrue(new Cover(cells, fewest).holes().isEmpty());
    assertTrue(fewest.size() < all.size());
  }
}
