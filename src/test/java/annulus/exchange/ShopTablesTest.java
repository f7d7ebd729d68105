package annulus.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.catalog.Catalog;
import annulus.catalog.Consequence;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.FieldSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A shop's own tables: what is taken, and that what is wrong points at its cell. */
class ShopTablesTest {
  static final List<String> TABLES = ShopFolder.TABLES;

  @TempDir Path folder;
  private ShopFolder shop;

  @BeforeEach
  void open() {
    shop = new ShopFolder(folder);
  }

  /** Line of the first row or line of the shipped table that holds the text. */
  private static int line(String table, String text) {
    String shipped = ShopFolder.shipped(table);
    return 1
        + (int) shipped.substring(0, shipped.indexOf(text)).chars().filter(c -> c == '\n').count();
  }

  @ParameterizedTest
  @FieldSource("TABLES")
  void the_shipped_table_may_be_laid_over_itself(String table) {
    Object before = shop.read(table);
    shop.put(table, ShopFolder.shipped(table));
    Object after = shop.read(table);
    if (before instanceof Catalog a && after instanceof Catalog b) {
      assertEquals(a.materials(), b.materials());
      assertEquals(a.compounds(), b.compounds());
      assertEquals(a.policy(), b.policy());
      assertFalse(a.version().equals(b.version()), "the version must show that more was read");
    } else {
      assertEquals(before, after);
    }
  }

  @ParameterizedTest
  @FieldSource("TABLES")
  void a_byte_order_mark_is_no_text(String table) {
    shop.put(table, "\uFEFF" + ShopFolder.shipped(table));
    assertFalse(shop.read(table) == null);
  }

  @ParameterizedTest
  @FieldSource("TABLES")
  void an_empty_file_is_refused(String table) {
    shop.put(table, "");
    PlacedProblem problem = shop.problem(table);
    assertEquals(table, problem.file());
    assertEquals(1, problem.line());
    assertTrue(List.of("has no header line", "is empty").contains(problem.problem()));
    assertFalse(problem.allowed().isEmpty());
  }

  @ParameterizedTest
  @FieldSource("TABLES")
  void a_byte_that_is_not_utf8_is_placed(String table) {
    String text = ShopFolder.shipped(table);
    int at = text.indexOf("\"source\"") >= 0 ? text.indexOf("\"source\"") + 20 : 4;
    byte[] bytes = text.getBytes(StandardCharsets.ISO_8859_1);
    bytes[at] = (byte) 0xE4;
    shop.put(table, bytes);
    PlacedProblem problem = shop.problem(table);
    String before = text.substring(0, at);
    assertEquals("is not UTF-8 text", problem.problem());
    assertEquals(1 + (int) before.chars().filter(c -> c == '\n').count(), problem.line());
    assertEquals(at - before.lastIndexOf('\n'), problem.column());
  }

  @Test
  void a_number_cut_in_the_middle_of_a_character_is_not_text() {
    byte[] cut = {'i', 'd', (byte) 0xC3};
    shop.put("cautions.csv", cut);
    assertEquals(3, shop.problem("cautions.csv").column());
  }

  @ParameterizedTest
  @FieldSource("TABLES")
  void half_a_file_is_refused_or_is_a_shorter_table(String table) {
    String text = ShopFolder.shipped(table);
    shop.put(table, text.substring(0, text.length() / 2));
    if (table.endsWith(".json")) {
      PlacedProblem problem = shop.problem(table);
      assertTrue(problem.problem().startsWith("is not well-formed JSON"), problem.problem());
      assertTrue(problem.line() > 1 && problem.column() > 0, problem.toString());
      assertFalse(problem.problem().contains("com.fasterxml"), problem.problem());
    } else {
      assertThrows(InputRefused.class, () -> shop.read(table));
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "compounds.json | \"gapUm\" | \"gapUmm\" | classes.gapUmm | is not a field here | did you mean gapUm?",
        "compounds.json | \"spreadLn\" | \"spread\" | classes.cure.spread | is not a field here | did you mean spreadLn?",
        "compounds.json | \"likely\": 6, | \"likly\": 6, | classes.strengthMPa.likly | is not a field here | did you mean likely?",
        "primers.json | \"primers\": | \"primer\": | primer | is not a field here | did you mean primers?",
        "rules.json | \"fact\": \"fit\" | \"fact\": \"fits\" | when.fact | \"fits\" is unknown | did you mean fit?",
        "rules.json | \"is\": \"stress-cracks\" | \"is\": \"stress-crack\" | when.is | \"stress-crack\" is unknown | did you mean stress-cracks?",
        "rules.json | \"is\": \"stress-cracks\" | \"are\": \"stress-cracks\" | when.are | is not a field here | fact, is",
        "rules.json | \"verdict\": \"prefers\" | \"verdict\": \"prefer\" | rules.verdict | \"prefer\" is unknown | did you mean prefers?",
        "rules.json | \"above\": 760 | \"over\": 760 | when.over | is not a field here | above",
        "materials.csv | expansion_low | expansion_lo | expansion_lo | is not a column here | did you mean expansion_low?",
        "materials.csv | plain carbon steel,metal | plain carbon steel,metall | kind | \"metall\" is unknown | did you mean metal?",
        "finishes.csv | painted,painted,coat | painted,painted,coats | film | \"coats\" is unknown | did you mean coat?",
        "activities.csv | slow,0.3 | slower,0.3 | level | \"slower\" is unknown | did you mean slow?",
        "policy.csv | wanted-confidence | wanted-confidance | id | \"wanted-confidance\" is unknown | did you mean wanted-confidence?",
        "form-limits.csv | oval-note,20,µm | oval-note,20,mm | unit | \"mm\" is another unit | µm",
        "consequences.csv | injury,full,true | injury,full,yes | slow_practice | \"yes\" is unknown | true, false",
        "caution-ranks.csv | skin,hurts-people | skin,hurts-peoples | severity | \"hurts-peoples\" is unknown | did you mean hurts-people?",
        "limited-use.csv | full,\"no full load | handling,\"no full load | until | is no stage that ends the limit | full",
        "cautions.csv | literature: of ten | literature of \"\"ten\"\" | - | - | -",
      })
  void a_mistyped_name_is_placed_with_the_nearest_known_one(
      String table, String from, String to, String field, String problem, String allowed) {
    shop.change(table, from, to);
    if (field.equals("-")) {
      assertTrue(shop.read(table) instanceof Catalog, "a quote inside quotes is text");
      return;
    }
    List<PlacedProblem> all = shop.problems(table);
    PlacedProblem found =
        all.stream()
            .filter(p -> p.field().equals(field) && p.problem().equals(problem))
            .findFirst()
            .orElseThrow(() -> new AssertionError(all.toString()));
    assertTrue(found.allowed().contains(allowed), found.toString());
    assertEquals(folder.resolve(table).toString(), found.file());
    assertEquals(line(table, from), found.line());
    assertTrue(found.column() > 0, found.toString());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "compounds.json | \"low\": -12, | \"low\": \"-12\", | gapUm.low | is the text \"-12\" | a number",
        "compounds.json | \"low\": -12, | \"low\": 1e999, | gapUm.low | 1e999 is out of range | µm radial",
        "compounds.json | \"low\": -12, | \"low\": -999, | gapUm.low | out of range | -50 to 760 µm radial",
        "compounds.json | \"low\": -12, | \"low\": null, | gapUm.low | is missing | needed",
        "compounds.json | \"low\": -12, |  | gapUm.low | is missing | needed",
        "compounds.json | \"low\": -12, | \"low\": 26, | gapUm | out of order | low <= high",
        "compounds.json | \"primedGapMaxUm\": 25 | \"primedGapMaxUm\": 24 | primedGapMaxUm | 24 µm radial is out of range | 25 to 760",
        "compounds.json | \"stage\": \"handling\" | \"stage\": \"functional\" | stages | out of order | rising",
        "compounds.json | \"hours\": 2 } | \"hours\": 0.1 } | stages | out of order | rising",
        "compounds.json | \"cure\": { | \"cure\": [], \"x\": { | cure | is a list | an object",
        "compounds.json | \"permanence\": \"releasable\" | \"permanence\": true | permanence | is true | some text",
        "compounds.json | \"confidence\": \"low\" | \"confidence\": \"certain\" | confidence | \"certain\" is unknown | high",
        "compounds.json | \"source\": \"common practice, no source\" | \"source\": \" \" | source | is the text | some text",
        "compounds.json | \"id\": \"thin-releasable\" | \"id\": \"press-film\" | id | \"press-film\" stands twice | once",
        "compounds.json | \"format\": 1 | \"format\": 2 | format | 2 is out of range | 1 to 1",
        "compounds.json | \"classes\": [ | \"classes\": [ 7, | classes | is the number 7 | an object",
        "primers.json | \"low\": 7, | \"low\": 70, | onPartDays | out of order | low <= likely <= high",
        "primers.json | \"high\": 0.9 | \"high\": 1.9 | strengthFactor.high | 1.9 is out of range | 0.05 to 1",
        "rules.json | \"above\": 760 | \"above\": 1e999 | when.above | 1e999 is out of range | 1e9",
        "rules.json | \"above\": 760 | \"above\": \"fit\" | when.above | no number fact | a number or",
        "rules.json | \"above\": 760 | \"above\": true | when.above | is true | a number or",
        "rules.json | \"is\": \"stress-cracks\" | \"is\": [] | when.is | is an empty list | at least one",
        "rules.json | \"is\": \"stress-cracks\" | \"is\": 3 | when.is | is the number 3 | a word",
        "rules.json | \"any\": [ | \"all\": [], \"x\": [ | all | is an empty list | at least one",
        "rules.json | {gap.likelyUm} | {gap.likleyUm} | reason | is not a fact | names of facts",
        "rules.json | \"id\": \"gap-too-narrow\" | \"id\": \"gap-too-wide\" | id | \"gap-too-wide\" stands twice | once",
        "materials.csv | steel-plain,plain carbon steel,metal,11.3 | steel-plain,plain carbon steel,metal,NaN | expansion_low | is the text \"NaN\" | a number",
        "materials.csv | steel-plain,plain carbon steel,metal,11.3 | steel-plain,plain carbon steel,metal,1e999 | expansion_low | is the text \"1e999\" | a number",
        "materials.csv | steel-plain,plain carbon steel,metal,11.3 | steel-plain,plain carbon steel,metal, | expansion_low | is missing | needed",
        "materials.csv | steel-plain,plain carbon steel,metal,11.3 | steel-plain,plain carbon steel,metal,-11.3 | expansion.low | -11.3 1e-6/K is out of range | -5 to 300",
        "materials.csv | steel-plain,plain carbon steel,metal,11.3 | steel-plain,plain carbon steel,metal,11.9 | expansion | out of order | low <= likely <= high",
        "materials.csv | steel-plain,plain carbon steel,metal,11.3 | steel-plain,plain carbon steel,metal,\"11,3\" | expansion_low | is the text \"11,3\" | a number",
        "materials.csv | steel-plain,plain carbon steel,metal,11.3 | steel-plain,plain carbon steel,metal | - | 20 cells | 21 cells",
        "materials.csv | steel-alloy, | steel-plain, | id | \"steel-plain\" stands twice | once",
        "materials.csv | steel-alloy, | , | id | is missing | needed",
        "materials.csv | ,high\\n | ,High\\n | confidence | \"High\" is unknown | did you mean high?",
        "instruments.csv | micrometer read to 0.01 mm,outside,0,50,4,10,2,0 | micrometer read to 0.01 mm,outside,0,51,4,10,2,0 | over_mm | overlaps another | at most touch",
        "instruments.csv | ,2,0,DIN 863-1 | ,2.5,0,DIN 863-1 | contacts | 2.5 is not whole | 2 to 3",
        "instruments.csv | outside-micrometer-coarse,outside micrometer read to 0.01 mm | outside-micrometer-coarse, | name | is missing | needed",
        "instruments.csv | outside-micrometer-coarse,outside micrometer read | ,outside micrometer read | instrument | is missing | needed",
        "instruments.csv | outside-micrometer-coarse,outside micrometer read | outside-micrometer-coarse,micrometer read | name | is another name | micrometer read",
        "instruments.csv | ,outside,0,50,4,1, | ,outside,0,50,4000,1, | mpe_um | 4000 is out of range | 0.1 to 500 µm",
        "consequences.csv | injury,full,true,3 | injury,full,true,0.5 | safety_factor | 0.5 is out of range | 1 to 20",
        "logger-rules.csv | coldest-c,-55 | coldest-c,55 | coldest-c | 55 °C is out of range | -80 to 0",
        "policy.csv | wanted-confidence,0.95 | wanted-confidence,lots | value | is the text \"lots\" | a number",
      })
  void a_wrong_value_is_placed_with_what_is_allowed(
      String table, String from, String to, String field, String problem, String allowed) {
    String was = from.replace("\\n", "\n");
    shop.change(table, was, to == null ? "" : to.replace("\\n", "\n"));
    List<PlacedProblem> all = shop.problems(table);
    PlacedProblem found =
        all.stream()
            .filter(p -> field.equals("-") ? p.field().isEmpty() : p.field().endsWith(field))
            .filter(p -> p.problem().contains(problem))
            .findFirst()
            .orElseThrow(() -> new AssertionError(all.toString()));
    assertTrue(found.allowed().contains(allowed), found.toString());
    assertEquals(folder.resolve(table).toString(), found.file());
    assertTrue(found.line() > 1, found.toString());
    assertEquals(all.size(), all.stream().distinct().count(), "each problem once: " + all);
  }

  @Test
  void a_cell_is_placed_by_line_and_cell_number() {
    shop.put(
        "activities.csv",
        """
            # a comment

            level,rate_low,rate_likely,rate_high,source,confidence
            active,0.8,1,1.5,"shop, two
            lines",low
            slow,0.3,half,0.8,shop,low
            """);
    assertEquals(
        new PlacedProblem(
            "activities.csv",
            6,
            3,
            "rate_likely",
            "is the text \"half\"",
            "a number, -1000000000 to 1000000000"),
        shop.problem("activities.csv"));
  }

  @Test
  void a_row_over_two_lines_is_placed_where_it_begins() {
    shop.put(
        "activities.csv",
        """
            level,rate_low,rate_likely,rate_high,source,confidence
            active,0.8,x,1.5,"shop, two
            lines",low
            """);
    assertEquals(2, shop.problem("activities.csv").line());
  }

  @Test
  void a_json_value_is_placed_by_line_and_character() {
    shop.put("primers.json", "{\n  \"format\": 1,\n  \"primers\": 12\n}");
    assertEquals(
        new PlacedProblem("primers.json", 3, 14, "primers", "is the number 12", "a list [ … ]"),
        shop.problem("primers.json"));
  }

  @Test
  void all_problems_of_a_table_come_at_once_in_file_order() {
    String text = ShopFolder.shipped("materials.csv").replace(",active,", ",activ,");
    shop.put("materials.csv", text);
    List<PlacedProblem> all = shop.problems("materials.csv");
    assertTrue(all.size() > 8, all.toString());
    for (int i = 1; i < all.size(); i++) {
      assertTrue(all.get(i - 1).line() < all.get(i).line());
    }
  }

  @Test
  void a_name_made_of_digits_is_a_name() {
    shop.change("materials.csv", "stainless-304,stainless steel 304,", "304,304,");
    assertEquals("304", shop.catalog().materials().get("304").name());
  }

  @Test
  void a_column_that_stands_twice_is_refused() {
    shop.put("cautions.csv", "id,text,source,confidence,id\na,b,shop,low,c\n");
    assertEquals(
        new PlacedProblem("cautions.csv", 1, 5, "id", "column stands twice", "each column once"),
        shop.problem("cautions.csv"));
  }

  @Test
  void a_missing_column_is_named() {
    shop.put("cautions.csv", "id,text,confidence\na,b,low\n");
    assertTrue(
        shop.problems("cautions.csv").stream()
            .anyMatch(p -> p.field().equals("source") && p.problem().equals("column is missing")));
  }

  @Test
  void a_quote_that_never_closes_is_placed_after_the_last_good_row() {
    shop.put("cautions.csv", "id,text,source,confidence\na,b,shop,low\nb,\"c,shop,low\n");
    PlacedProblem problem = shop.problem("cautions.csv");
    assertEquals(3, problem.line());
    assertTrue(problem.problem().contains("quote"), problem.problem());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "[1] | an object",
        "7 | an object",
        "\"text\" | an object",
        "{} {} | one JSON object",
        "{\"format\": 1, \"format\": 1} | each field once",
        "{\"format\": NaN} | JSON",
        "{\"format\": 01} | JSON",
        "{format: 1} | JSON",
        "{'format': 1} | JSON",
        "{\"format\": 1,} | JSON",
        "// no comments | JSON",
        "{ | JSON",
        "id,value | JSON",
      })
  void what_is_not_one_json_object_is_refused(String text, String allowed) {
    shop.put("rules.json", text);
    List<PlacedProblem> all = shop.problems("rules.json");
    assertTrue(all.get(0).allowed().contains(allowed), all.toString());
    assertTrue(all.get(0).line() >= 1 && all.get(0).column() >= 1, all.toString());
  }

  @Test
  void deep_nesting_long_numbers_and_long_names_are_refused_not_followed() {
    shop.put("rules.json", "[".repeat(100_000));
    String depth = shop.problem("rules.json").problem();
    assertTrue(depth.contains("depth") && !depth.contains("`"), depth);
    shop.put("rules.json", "{\"format\": " + "1".repeat(100_000) + "}");
    for (PlacedProblem problem : shop.problems("rules.json")) {
      assertTrue(problem.toString().contains("rules.json:1:"), problem.toString());
    }
    shop.put("rules.json", "{\"format\": 1, \"rules\": [], \"" + "x".repeat(40_000) + "\": 1}");
    for (PlacedProblem problem : shop.problems("rules.json")) {
      assertTrue(problem.toString().length() <= 2000);
    }
    shop.put(
        "rules.json",
        "{\"format\": 1, \"rules\": [{\"when\": "
            + "{\"all\": [".repeat(15)
            + "{}"
            + "]}".repeat(15)
            + "}]}");
    assertTrue(shop.problems("rules.json").size() > 1);
  }

  @Test
  void a_problem_is_one_line_whatever_was_typed() {
    shop.put("rules.json", "{\"format\": 1, \"rules\": [], \"a\\nb\\u2028c\": 1}");
    String text = shop.problems("rules.json").toString();
    assertTrue(text.contains("a b c"), text);
    assertFalse(text.contains("\n"), text);
  }

  @Test
  void a_shop_row_replaces_the_row_with_its_id_and_leaves_the_others() {
    Catalog own = shop.catalog();
    shop.put(
        "consequences.csv",
        """
            consequence,stage,slow_practice,safety_factor,source,confidence
            stranding,full,true,3,shop,low
            """);
    Catalog laid = shop.catalog();
    assertEquals(3, laid.release().get(Consequence.STRANDING).safetyFactor());
    assertTrue(laid.release().get(Consequence.STRANDING).slowPractice());
    assertEquals(own.release().get(Consequence.INJURY), laid.release().get(Consequence.INJURY));
  }

  /** Else a joint that can hurt somebody would go out before one that only strands. */
  @ParameterizedTest
  @ValueSource(
      strings = {"injury,functional,true,3", "injury,full,true,1.5", "injury,full,false,3"})
  void a_worse_consequence_that_asks_for_less_is_refused(String row) {
    shop.put(
        "consequences.csv",
        "consequence,stage,slow_practice,safety_factor,source,confidence\n"
            + "stranding,full,true,2,shop,low\n"
            + row
            + ",shop,low\n");
    InputRefused refused = assertThrows(InputRefused.class, shop::catalog);
    assertTrue(refused.getMessage().contains("asks for less than stranding"));
  }

  /** A negative rest once would have let a joint go before it was fixed. */
  @Test
  void a_policy_number_that_would_let_a_joint_go_early_is_refused() {
    shop.put(
        "policy.csv",
        """
        id,value,unit,meaning,source,confidence
        undisturbed-after-fixture-min,-600,min,left alone,shop,low
        """);
    InputRefused refused = assertThrows(InputRefused.class, shop::catalog);
    assertTrue(refused.getMessage().contains("undisturbed-after-fixture-min"));
  }

  @Test
  void a_contradicting_shop_rule_is_placed_at_its_id() {
    shop.put(
        "rules.json",
        """
        {"format": 1, "rules": [
          {"id": "shop-likes-interference", "summary": "s", "verdict": "prefers",
           "when": {"fact": "fit", "is": "interference"}, "reason": "r",
           "source": "shop", "confidence": "low"}
        ]}
        """);
    PlacedProblem problem = shop.problem("rules.json");
    assertEquals("rules.json", problem.file());
    assertEquals(2, problem.line());
    assertEquals(10, problem.column());
    assertEquals("shop-likes-interference", problem.field());
    assertEquals("contradicts dry-press on the same facts", problem.problem());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "{\"fact\": \"cure.coldestC\", \"above\": 20}, {\"fact\": \"cure.coldestC\", \"below\": 10}",
        "{\"fact\": \"fit\", \"is\": \"clear\"}, {\"fact\": \"fit\", \"is\": \"interference\"}",
        "{\"fact\": \"warranty\", \"is\": true}, {\"fact\": \"warranty\", \"is\": false}",
      })
  void a_rule_that_can_never_speak_is_refused(String parts) {
    shop.put(
        "rules.json",
        "{\"format\": 1, \"rules\": [\n{\"id\": \"never\", \"summary\": \"s\", \"verdict\": \"caution\","
            + " \"when\": {\"all\": ["
            + parts
            + "]}, \"reason\": \"r\", \"source\": \"shop\", \"confidence\": \"low\"}]}");
    PlacedProblem problem = shop.problem("rules.json");
    assertEquals(2, problem.line());
    assertEquals("can never speak: its tests exclude each other", problem.problem());
  }

  @Test
  void a_folder_that_is_not_there_is_refused() {
    InputRefused refused =
        assertThrows(InputRefused.class, () -> DataFiles.withShop(folder.resolve("nowhere")));
    assertEquals("--data", refused.problems().get(0).field());
  }

  @Test
  void a_file_that_is_far_too_large_is_refused_unread() {
    shop.put("policy.csv", new byte[8_000_001]);
    assertEquals("is larger than 2 MB", shop.problem("policy.csv").problem());
  }
}
