package annulus.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.OrderText;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The schema of orders against the reader, by a validator that is not ours. */
class OrderSchemaTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String TEXT = ShopFolder.shipped("schema/order.schema.json");
  private static final Schema SCHEMA =
      SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
          .getSchema(TEXT, InputFormat.JSON);

  private static List<String> errors(String json) {
    return SCHEMA.validate(json, InputFormat.JSON).stream().map(Object::toString).toList();
  }

  static Stream<Path> demoOrders() throws IOException {
    try (Stream<Path> files = Files.list(Path.of("demo-data/orders"))) {
      return files.sorted().toList().stream();
    }
  }

  @ParameterizedTest
  @MethodSource("demoOrders")
  void every_demo_order_follows_the_schema(Path order) throws IOException {
    assertEquals(List.of(), errors(Files.readString(order)));
  }

  @Test
  void the_schema_follows_the_rules_of_schemas() {
    Schema meta =
        SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
            .getSchema(SchemaLocation.of("https://json-schema.org/draft/2020-12/schema"));
    assertEquals(List.of(), meta.validate(TEXT, InputFormat.JSON));
  }

  /** The fields the reader asks for are those it offers when one is unknown. */
  @ParameterizedTest
  @CsvSource({
    "'', /properties",
    "bore., /properties/bore/properties",
    "part., /properties/part/properties",
    "load., /$defs/load/properties",
    "primer., /$defs/primer/properties"
  })
  void the_schema_has_every_field_that_the_reader_knows(String at, String pointer)
      throws IOException {
    OrderText order = new OrderText().set("load.axialN", 1);
    order.set("primer", null).set("primer.id", "primer-dry").set(at + "zzzzzzzzzzzz", 1);
    PlacedProblem unknown =
        assertThrows(InputRefused.class, order::order).problems().stream()
            .filter(p -> p.field().equals(at + "zzzzzzzzzzzz"))
            .findFirst()
            .orElseThrow();
    Set<String> known = new TreeSet<>(List.of(unknown.allowed().split(", ")));
    Set<String> described = new TreeSet<>();
    JSON.readTree(TEXT).at(pointer).fieldNames().forEachRemaining(described::add);
    if (at.isEmpty()) {
      described.removeIf(f -> f.endsWith("PlusMinusUm") && !known.contains(f));
      described.removeIf(f -> f.equals("diameterMm") && !known.contains(f));
    }
    assertEquals(described, known);
  }

  @Test
  void every_field_is_described_and_no_object_is_open() throws IOException {
    JsonNode root = JSON.readTree(TEXT);
    walk(root);
  }

  private static void walk(JsonNode node) {
    if (node.path("type").asText().equals("object")) {
      assertFalse(node.path("additionalProperties").asBoolean(true), node.toString());
      node.path("properties")
          .properties()
          .forEach(
              e ->
                  assertTrue(
                      e.getValue().has("description") || e.getKey().equals("load"), e.getKey()));
    }
    node.forEach(OrderSchemaTest::walk);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "\"format\" : 1|\"format\" : 2",
        "\"format\" : 1,|",
        "\"format\" : 1|\"format\" : \"1\"",
        "\"format\" : 1|\"format\" : 1, \"gap\" : 30",
        "\"format\" : 1|\"format\" : 1, \"clearance\" : null",
        "\"format\" : 1|\"format\" : 1, \"diameterMm\" : 30",
        "\"format\" : 1|\"format\" : 1, \"radialGapUm\" : 30",
        "\"format\" : 1|\"format\" : 1, \"radialGapPlusMinusUm\" : 3",
        "\"format\" : 1|\"format\" : 1, \"load\" : {}",
        "\"format\" : 1|\"format\" : 1, \"load\" : { \"axialN\": 0 }",
        "\"format\" : 1|\"format\" : 1, \"load\" : { \"axialN\": -1 }",
        "\"format\" : 1|\"format\" : 1, \"load\" : { \"axialN\": 1, \"safetyFactor\": 0.5 }",
        "\"format\" : 1|\"format\" : 1, \"load\" : { \"axialN\": 1, \"repeats\": \"often\" }",
        "\"format\" : 1|\"format\" : 1, \"load\" : { \"axialN\": 1, \"duty\": \"pulley-hub\" }",
        "\"format\" : 1|\"format\" : 1, \"confidence\" : 95",
        "\"format\" : 1|\"format\" : 1, \"sealNear\" : \"yes\"",
        "\"format\" : 1|\"format\" : 1, \"consequence\" : \"none\"",
        "\"format\" : 1|\"format\" : 1, \"movedAt\" : \"soon\"",
        "\"job\" : \"T-1\"|\"job\" : 1",
        "\"job\" : \"T-1\"|\"job\" : \" \"",
        "\"job\" : \"T-1\"|\"jobs\" : \"T-1\"",
        "\"material\" : \"steel-plain\",|",
        "\"material\" : \"steel-plain\"|\"material\" : null",
        "\"material\" : \"steel-plain\"|\"material\" : [ ]",
        "\"state\" : \"clean\"|\"state\" : \"cleaned\"",
        "\"state\" : \"clean\"|\"state\" : \"clean\", \"arrivesAtC\" : -41",
        "\"state\" : \"clean\"|\"state\" : \"clean\", \"insideDiameterMm\" : 20",
        "\"state\" : \"clean\"|\"state\" : \"clean\", \"bearingMm\" : 30",
        "[ 30.03 ]|[ ]",
        "[ 30.03 ]|30.03",
        "[ 30.03 ]|null",
        "[ 30.03 ]|[ null ]",
        "[ 30.03 ]|[ 4197 ]",
        "[ 30.03 ]|[ 0.4 ]",
        "[ 30.03 ]|[ \"30,03\" ]",
        "[ 30.03 ]|[ \"30.03 m\" ]",
        "[ 30.03 ]|[ { \"depthMm\": 3 } ]",
        "[ 30.03 ]|[ { \"mm\": 30.03, \"angleDeg\": 361 } ]",
        "[ 30.03 ]|[ { \"mm\": 30.03, \"deep\": 3 } ]",
        "\"engagementMm\" : 20,|",
        "\"engagementMm\" : 20|\"engagementMm\" : 0",
        "\"engagementMm\" : 20|\"engagementMm\" : null",
        "\"temperatureC\" : 22|\"temperatureC\" : 68",
        "\"temperatureC\" : 22|\"temperatureC\" : \"68 K\"",
        "\"temperaturePlusMinusC\" : 0|\"temperaturePlusMinusC\" : -1",
        "\"primer\" : \"none\"|\"primer\" : 5",
        "\"primer\" : \"none\"|\"primer\" : { \"on\": \"both\" }",
        "\"primer\" : \"none\"|\"primer\" : { \"id\": \"primer-dry\", \"on\": \"all\" }",
        "\"primer\" : \"none\"|\"primer\" : { \"id\": \"primer-dry\", \"minutesOnPart\": -1 }",
        "\"start\" : \"2027-03-11T10:00Z\"|\"start\" : \"11.03.2027\"",
        "\"start\" : \"2027-03-11T10:00Z\"|\"start\" : 1804759200",
        "\"serviceLowC\" : 0|\"serviceLowC\" : -101",
      })
  void schema_and_reader_refuse_the_same(String right, String wrong) {
    String json = new OrderText().json();
    assertTrue(json.contains(right), right);
    int at = json.indexOf(right);
    String broken =
        json.substring(0, at) + (wrong == null ? "" : wrong) + json.substring(at + right.length());
    assertFalse(errors(broken).isEmpty(), broken);
    assertThrows(InputRefused.class, () -> OrderText.read(broken), broken);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "[ 30.03 ]|[ \"30.03\", \"30.03 mm\", \"1.1823 in\", \"3.003cm\", \"1.1823\\\"\" ]",
        "[ 30.03 ]|[ { \"mm\": \"30.03 mm\", \"depthMm\": \"3 mm\", \"angleDeg\": \"90°\" } ]",
        "\"temperatureC\" : 22|\"temperatureC\" : \"68 F\"",
        "\"temperatureC\" : 22|\"temperatureC\" : \"20 °C\"",
        "\"temperatureC\" : 22|\"temperatureC\" : null",
        "\"temperaturePlusMinusC\" : 0|\"temperaturePlusMinusC\" : \"1.5\"",
        "\"temperaturePlusMinusC\" : 0|\"temperaturePlusMinusC\" : \"1.5 °C\"",
        "\"primer\" : \"none\"|\"primer\" : \"primer-dry\"",
        "\"primer\" : \"none\"|\"primer\" : { \"id\": \"primer-dry\", \"minutesOnPart\": \"9 min\" }",
        "\"format\" : 1|\"format\" : 1, \"load\" : { \"duty\": \"pulley-hub\" }",
        "\"format\" : 1|\"format\" : 1, \"load\" : { \"axialN\": \"90 N\", \"torqueNm\": 0 }",
        "\"format\" : 1|\"format\" : 1, \"load\" : null",
        "\"format\" : 1|\"format\" : 1, \"confidence\" : \"0.9\"",
        "\"format\" : 1|\"format\" : 1, \"class\" : \"thin-lasting\"",
        "\"start\" : \"2027-03-11T10:00Z\"|\"start\" : \"2027-03-11 10:00:30.5\"",
        "\"start\" : \"2027-03-11T10:00Z\"|\"start\" : \"2027-03-11T10:00+01:00\"",
      })
  void schema_and_reader_take_the_same(String change) {
    String[] two = change.split("\\|");
    String json = new OrderText().json();
    assertTrue(json.contains(two[0]), two[0]);
    int at = json.indexOf(two[0]);
    String changed = json.substring(0, at) + two[1] + json.substring(at + two[0].length());
    assertEquals(List.of(), errors(changed));
    OrderText.read(changed);
  }
}
