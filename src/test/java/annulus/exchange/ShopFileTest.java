package annulus.exchange;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.DeskData;
import annulus.advice.JointOrder;
import annulus.advice.Shop;
import annulus.advice.ShopPlace;
import annulus.advice.WarmUpTable;
import annulus.handback.OpenSpan;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ShopFileTest {
  private static final String DEMO = text("demo-data/shop.json");
  private static final Schema SCHEMA =
      SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
          .getSchema(text("data/schema/shop.schema.json"), InputFormat.JSON);

  private static String text(String file) {
    try {
      return Files.readString(Path.of(file));
    } catch (IOException e) {
      throw new IllegalStateException(file, e);
    }
  }

  private static Shop read(String json) throws IOException {
    return ShopFile.read(
        "shop.json", new StringReader(json), DeskData.KNOWLEDGE.catalog().policy());
  }

  private static String refused(String json) {
    return assertThrows(InputRefused.class, () -> read(json)).getMessage();
  }

  @Test
  void the_invented_shop_is_read_whole() throws IOException {
    Shop shop = read(DEMO);
    assertEquals(
        List.of(OpenSpan.of("09:00", "12:00")), shop.hours().spansOn(LocalDate.of(2026, 12, 24)));
    assertEquals(List.of(), shop.hours().spansOn(LocalDate.of(2027, 3, 17)));
    assertEquals(Duration.ofMinutes(15), shop.rule().handOverCheck());
    assertEquals(
        List.of("bench", "cupboard", "cellar"),
        shop.places().stream().map(ShopPlace::name).toList());
    assertEquals(Duration.ofMinutes(30), shop.place("cupboard").orElseThrow().touch());
    assertEquals(Duration.ofMinutes(20), shop.place("bench").orElseThrow().touch());
    assertTrue(shop.place("cupboard").orElseThrow().warm());
  }

  @Test
  void what_is_not_said_is_as_the_policy_says() throws IOException {
    Shop shop = read("{\"format\":1,\"zone\":\"Europe/Vienna\",\"hours\":{}}");
    Map<String, Double> rows = policyRows();
    assertEquals(rows.get("hand-over-check-min"), (double) shop.rule().handOverCheck().toMinutes());
    assertEquals(rows.get("promise-rounding-min"), shop.rule().roundUpToMinutes());
    assertEquals(rows.get("touch-min"), (double) shop.touch().toMinutes());
    String schema = text("data/schema/shop.schema.json").replaceAll("\\s+", " ");
    assertTrue(schema.contains("\"maximum\": 600, \"default\": 60"));
  }

  private static Map<String, Double> policyRows() throws IOException {
    Map<String, Double> rows = new HashMap<>();
    for (String line : text("data/policy.csv").lines().toList()) {
      String[] cells = line.split(",", 4);
      if (cells.length == 4 && cells[2].equals("min")) {
        rows.put(cells[0], Double.valueOf(cells[1]));
      }
    }
    return rows;
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "\"roundUpToMinutes\"|\"roundUpMinutes\"|roundUpMinutes: is not a field here",
        "\"handOverCheckMinutes\": 15|\"handOverCheckMinutes\": 500|500 is out of range",
        "\"2026-12-25\"|\"2026-12-35\"|is no date",
        "\"from\": \"13:30\"|\"from\": \"25:30\"|is not a time of day",
        "\"at\": \"06:30\"|\"at\": \"6:30\"|is not a time of day",
        "\"celsius\": 35|\"celsius\": 95|95 °C is out of range",
        "\"constantC\": 12|\"constantF\": 12|constantF: is not a field here",
        "\"wednesday\", \"thursday\", \"friday\"]|\"wensday\", \"thursday\", \"friday\"]|wednesday",
      })
  void schema_and_reader_refuse_the_same(String right, String wrong, String message) {
    assertTrue(DEMO.contains(right), right);
    String json = DEMO.replace(right, wrong);
    String refusal = refused(json);
    assertTrue(refusal.contains(message), refusal);
    assertTrue(refusal.matches("(?s)shop\\.json:\\d+:\\d+: .*"), refusal);
    if (!wrong.contains("95")) {
      assertFalse(SCHEMA.validate(json, InputFormat.JSON).isEmpty(), "the schema takes it");
    }
  }

  @Test
  void a_place_when_switched_off_must_be_one_that_stands_before() {
    String refusal = refused(DEMO.replace("\"offPlace\": \"bench\"", "\"offPlace\": \"cellar\""));
    assertTrue(refusal.contains("\"cellar\" is unknown"), refusal);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "{\"place\": \"cellar\"}",
        "{\"constantC\": 18, \"plusMinusC\": 1}",
        "{\"profile\": [{\"at\": \"08:00\", \"c\": 19}, {\"at\": \"20:00\", \"c\": \"59 F\"}]}"
      })
  void an_order_says_where_it_cures(String cure) throws IOException {
    JointOrder order = order(cure);
    double celsius = order.cure().history().celsiusAt(0);
    assertTrue(celsius >= 12 && celsius <= 19, order.cure().describedAs());
    assertFalse(order.assumptions().stream().anyMatch(a -> a.field().equals("temperatureC")));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{\"place\": \"cellar\"}|true",
        "{\"constantC\": 18, \"plusMinusC\": 1}|true",
        "{\"profile\": [{\"at\": \"08:00\", \"c\": \"59 F\"}]}|true",
        "{\"plusMinusC\": 1}|false",
        "{\"constantC\": 68}|false",
        "{\"profile\": [{\"at\": \"8:00\", \"c\": 19}]}|false",
        "{\"place\": \"cellar\", \"plusMinusC\": 1}|false",
      })
  void schema_and_reader_agree_on_where_an_order_cures(String cure, boolean right) {
    Schema schema =
        SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
            .getSchema(text("data/schema/order.schema.json"), InputFormat.JSON);
    String json =
        text("demo-data/orders/16-stated-gap.json")
            .replace("\"temperatureC\": \"68 F\"", "\"cure\": " + cure);
    List<?> errors = schema.validate(json, InputFormat.JSON);
    assertEquals(right, errors.isEmpty(), errors.toString());
    if (right) {
      assertDoesNotThrow(() -> order(cure));
    } else {
      assertThrows(InputRefused.class, () -> order(cure));
    }
  }

  /** The points of the bench around midnight, where the cupboard is never off, last no time. */
  @Test
  void a_place_that_is_never_off_is_described_by_its_one_temperature() throws IOException {
    Shop shop =
        DeskData.shop(
            s -> {
              ObjectNode warm = ((ObjectNode) s.at("/places/cupboard/warm"));
              ObjectNode always = warm.putArray("hours").addObject();
              always.put("from", "00:00").put("to", "24:00");
              ArrayNode days = always.putArray("days");
              for (DayOfWeek day : DayOfWeek.values()) {
                days.add(Fields.word(day));
              }
            });
    ShopPlace cupboard = shop.place("cupboard").orElseThrow();
    assertEquals("cupboard, planned 35 ± 3 °C warm hours", cupboard.describedAs());
    assertEquals(12, cupboard.unsaidC(), "that of the cellar");
    assertEquals(12, shop.place("bench").orElseThrow().unsaidC());
  }

  @Test
  void temperatures_of_a_place_are_described_to_a_tenth() throws IOException {
    Shop shop = DeskData.shop(s -> ((ObjectNode) s.at("/places/bench/profile/0")).put("c", "55 F"));
    assertEquals(
        "bench, planned 12.8 to 19 ± 2 °C by the clock",
        shop.place("bench").orElseThrow().describedAs());
  }

  @Test
  void a_profile_of_an_order_runs_by_the_order_s_zone() throws IOException {
    String profile =
        "{\"profile\": [{\"at\": \"08:00\", \"c\": 10}, {\"at\": \"08:00\", \"c\": 20},"
            + " {\"at\": \"20:00\", \"c\": 20}, {\"at\": \"20:00\", \"c\": 10}]}";
    String order =
        text("demo-data/orders/16-stated-gap.json")
            .replace("\"temperatureC\": \"68 F\"", "\"cure\": " + profile)
            .replaceFirst("\"zone\": \"[^\"]*\"", "\"zone\": \"Asia/Tokyo\"")
            .replaceFirst("\"start\": \"[^\"]*\"", "\"start\": \"2027-03-11T07:59\"");
    JointOrder read =
        new OrderReader(DeskData.KNOWLEDGE, DeskData.at("2027-03-11T08:00"), DeskData.VIENNA)
            .json("order.json", new StringReader(order));
    assertEquals(10, read.cure().history().celsiusAt(0));
    assertEquals(20, read.cure().history().celsiusAt(120));
    String said = text("data/schema/order.schema.json");
    assertTrue(said.contains("a profile that repeats every day, by the clock of the order's zone"));
  }

  @Test
  void without_a_doubt_the_policy_s_is_taken() throws IOException {
    assertEquals(2, order("{\"constantC\": 18}").cure().plusMinusC());
  }

  private static JointOrder order(String cure) throws IOException {
    String text = text("demo-data/orders/16-stated-gap.json");
    String json = text.replace("\"temperatureC\": \"68 F\"", "\"cure\": " + cure);
    return new OrderReader(
            DeskData.KNOWLEDGE,
            DeskData.at("2027-03-11T08:00"),
            DeskData.VIENNA,
            DeskData.SHOP.places())
        .json("order.json", new StringReader(json));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{\"place\": \"bnech\"}|did you mean bench?",
        "{\"constantC\": 18, \"profile\": []}|one of constantC, profile",
        "{\"plusMinusC\": 1}|are both missing",
        "{\"constantC\": 68}|if it is °F",
        "{\"constantC\": 18, \"plusMinus\": 1}|did you mean plusMinusC?",
        "{\"profile\": [{\"at\": \"12:00\", \"c\": 1}, {\"at\": \"08:00\", \"c\": 2}]}|rising order",
      })
  void an_order_that_can_t_be_understood_is_refused_with_its_place(String cure, String message) {
    String refusal = assertThrows(InputRefused.class, () -> order(cure)).getMessage();
    assertTrue(refusal.contains(message), refusal);
  }

  @Test
  void a_place_without_a_shop_is_refused() {
    String json =
        text("demo-data/orders/16-stated-gap.json")
            .replace("\"temperatureC\": \"68 F\"", "\"cure\": {\"place\": \"bench\"}");
    OrderReader reader =
        new OrderReader(DeskData.KNOWLEDGE, DeskData.at("2027-03-11T08:00"), DeskData.VIENNA);
    String refusal =
        assertThrows(InputRefused.class, () -> reader.json("order.json", new StringReader(json)))
            .getMessage();
    assertTrue(refusal.contains("a shop file with places"), refusal);
  }

  @Test
  void every_material_has_a_family_that_is_known() throws IOException {
    WarmUpTable table = WarmUpFile.read(DataFiles.bundled());
    for (String material : DeskData.KNOWLEDGE.catalog().materials().keySet()) {
      assertTrue(table.family().containsKey(material), material);
    }
    assertEquals(DeskData.KNOWLEDGE.catalog().materials().keySet(), table.family().keySet());
  }
}
