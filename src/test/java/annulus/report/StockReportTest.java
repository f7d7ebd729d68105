package annulus.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.catalog.Confidence;
import annulus.catalog.Provenance;
import annulus.quantity.Interval;
import annulus.stock.Cover;
import annulus.stock.CoverAxes;
import annulus.stock.CoverCell;
import annulus.stock.HeldBack;
import annulus.stock.Lot;
import annulus.stock.LotCheck;
import annulus.stock.Lots;
import annulus.stock.SafetySheet;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.xml.sax.InputSource;

class StockReportTest {
  private static final Provenance SOURCE = new Provenance("test", Confidence.LOW);

  private static LotCheck check(Lot lot) {
    return LotCheck.of(lot, Lots.items().get(lot.item()), Lots.DAY, 30);
  }

  private static StockCheckReport report(Lot... lots) {
    List<LotCheck> checks = new ArrayList<>();
    for (Lot lot : lots) {
      checks.add(check(lot));
    }
    return new StockCheckReport(Lots.DAY, 30, checks, List.of());
  }

  @Test
  void the_check_names_the_rule_and_its_source() {
    String text =
        report(Lots.lot("007", "a", 5, null, Lots.DAY.minusMonths(5), Lots.DAY.plusYears(1)))
            .text();
    assertTrue(text.contains("use by 2026-12-25, 6 months after opening (test)"), text);
    assertTrue(text.contains("No safety data sheet on file"), text);
  }

  @Test
  void the_check_is_a_no_when_something_must_not_be_used_or_nothing_may() {
    Lot good = Lots.sealed("1", "a", 5, Lots.DAY);
    Lot late = Lots.sealed("2", "a", 5, Lots.DAY.minusDays(1));
    Lot empty = Lots.sealed("3", "a", 0, Lots.DAY);
    assertFalse(report(good, empty).isNo());
    assertTrue(report(good, late).isNo());
    assertTrue(report(empty).isNo());
    assertTrue(report().isNo());
  }

  @Test
  void the_check_as_json_reads_back() throws Exception {
    String json = report(Lots.sealed("\"007\"", "a", 5.25, Lots.DAY.minusDays(1))).json();
    JsonNode lot = new ObjectMapper().readTree(json).get("lots").get(0);
    assertEquals("\"007\"", lot.get("lot").asText());
    assertEquals(5.25, lot.get("leftMl").asDouble());
    assertEquals("must-not", lot.get("standing").asText());
    assertEquals("past-printed-expiry", lot.get("against").get(0).asText());
  }

  @Test
  void the_check_as_json_follows_its_schema_and_the_schema_can_refuse() throws Exception {
    Schema schema =
        SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
            .getSchema(
                Files.readString(Path.of("data/schema/stock-check.schema.json")), InputFormat.JSON);
    String json =
        report(
                Lots.sealed("1", "a", 5, Lots.DAY.minusDays(1)),
                Lots.lot("2", "p", 5, null, Lots.DAY, null),
                held("frozen", Lots.sealed("4", "a", 5, Lots.DAY)),
                Lots.lot("3", "a", 0, Lots.DAY, null, null))
            .json();
    assertEquals(List.of(), schema.validate(json, InputFormat.JSON));
    String odd = json.replace("\"because\"", "\"becuase\"");
    assertFalse(schema.validate(odd, InputFormat.JSON).isEmpty());
  }

  @Test
  void a_tag_escapes_what_the_shop_typed_and_never_invites_use_of_a_lot_past_its_day() {
    Lot lot = Lots.sealed("<007>", "a", 5, Lots.DAY.minusDays(1));
    Lot named =
        new Lot(
            lot.lot(),
            lot.item(),
            "<b>bench & co</b>",
            lot.container(),
            lot.left(),
            lot.received(),
            Optional.empty(),
            lot.expires(),
            "",
            SafetySheet.NONE,
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            List.of());
    String html = new LotTag(check(named), Lots.DAY).html();
    assertTrue(html.contains("&lt;b&gt;bench &amp; co&lt;/b&gt;"));
    assertTrue(html.contains("&lt;007&gt;"));
    assertTrue(html.contains("DO NOT USE"));
    assertFalse(html.contains("USE BY"));
  }

  private static Lot held(String reason, Lot lot) {
    return lot.heldBackFor(List.of(new HeldBack("h1", Lots.DAY, "Ines", reason)));
  }

  @Test
  void a_lot_held_back_is_told_first_with_who_when_and_why() throws Exception {
    Lot lot = held("recalled by its maker", Lots.sealed("1", "a", 5, Lots.DAY.minusDays(1)));
    String words =
        "held back since 2026-11-25 by Ines: recalled by its maker; past its printed expiry";
    String text = report(lot).text().replaceAll("\\s+", " ");
    assertTrue(text.contains("MUST NOT BE USED 1 a 5 mL " + words), text);
    Lot empty = held("leaking", Lots.sealed("2", "a", 0, Lots.DAY.plusDays(90)));
    assertTrue(report(empty).text().contains("held back since 2026-11-25 by Ines: leaking"));
    JsonNode json = new ObjectMapper().readTree(report(lot).json()).at("/lots/0");
    assertEquals("held-back", json.at("/against/0").asText());
    assertEquals("recalled by its maker", json.at("/heldBack/0/reason").asText());
    assertEquals("Ines", json.at("/heldBack/0/who").asText());
    assertEquals("2026-11-25", json.at("/heldBack/0/day").asText());
  }

  /** As whoever keeps the stock calls them, never by the names of the sheet's columns. */
  @Test
  void what_differs_of_a_lot_is_told_in_plain_words() {
    Lot here = Lots.lot("1", "a", 5, null, null, Lots.DAY.plusYears(1));
    Lot again = Lots.lot("1", "a", 6, Lots.DAY.minusDays(9), Lots.DAY, Lots.DAY.plusDays(9));
    assertEquals(
        Optional.of(
            "lot 1: size: 5 mL here, 6 mL said now, 5 mL counts; came on: not known here,"
                + " 2026-11-16 said now, 2026-11-16 counts; opened on: not known here, 2026-11-25"
                + " said now, 2026-11-25 counts; printed expiry: 2027-11-25 here, 2026-12-04 said"
                + " now, 2026-12-04 counts"),
        LotDifference.words(here, again));
    assertEquals(Optional.empty(), LotDifference.words(again, again));
  }

  @Test
  void the_label_of_a_lot_held_back_says_so() {
    Lot lot = held("seal broken", Lots.sealed("1", "a", 5, Lots.DAY.plusYears(1)));
    String text = new LotTag(check(lot), Lots.DAY).text();
    assertTrue(
        text.contains("HELD: DO NOT USE\nheld back since 2026-11-25 by Ines: seal broken"), text);
    assertFalse(text.contains("USE BY"));
  }

  private static CoverReport cover() {
    List<CoverAxes.Gaps> gaps =
        List.of(
            new CoverAxes.Gaps("g1", "one", new Interval(0, 10), SOURCE),
            new CoverAxes.Gaps("g2", "two", new Interval(10, 20), SOURCE),
            new CoverAxes.Gaps("g3", "three", new Interval(20, 30), SOURCE));
    List<CoverAxes.Surfaces> surfaces =
        List.of(
            new CoverAxes.Surfaces("s1", "steel & steel", "x", "y", SOURCE),
            new CoverAxes.Surfaces("s2", "slow", "x", "y", SOURCE));
    List<CoverAxes.Service> services = List.of(new CoverAxes.Service("t", "to 60 °C", 60, SOURCE));
    List<CoverCell> cells = new ArrayList<>();
    for (boolean releasable : new boolean[] {true, false}) {
      for (CoverAxes.Surfaces s : surfaces) {
        for (CoverAxes.Gaps g : gaps) {
          boolean hole = releasable || (g.id().equals("g3") && s.id().equals("s2"));
          List<Set<String>> ways = List.of(Set.of(hole ? "b" : "a"));
          cells.add(new CoverCell(g.id(), s.id(), "t", releasable, ways));
        }
      }
    }
    return new CoverReport(new Cover(cells, Set.of("a")), new CoverAxes(gaps, surfaces, services));
  }

  @Test
  void holes_are_named_in_words_with_neighbours_together() {
    assertEquals(
        List.of(
            "Comes apart again, to 60 °C: nothing for radial gaps of 0 to 30 µm, whatever the faces",
            "Stays for good, to 60 °C: nothing for radial gaps of 20 to 30 µm, slow"),
        cover().holeWords());
    assertTrue(cover().text().contains("Fewest to close them all: b."));
  }

  @Test
  void the_picture_is_well_formed_and_has_a_box_for_every_joint() throws Exception {
    String svg = CoverPicture.svg(cover());
    Document document =
        DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .parse(new InputSource(new StringReader(svg)));
    int legend = 3;
    int background = 1;
    assertEquals(12 + legend + background, document.getElementsByTagName("rect").getLength());
    assertTrue(svg.contains("steel &amp; steel"));
  }
}
