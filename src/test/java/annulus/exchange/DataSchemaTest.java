package annulus.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.select.Fact;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The shipped JSON tables against their schemas, by a validator that is not ours. */
class DataSchemaTest {
  private static JsonNode schema(String name) {
    try {
      return new ObjectMapper().readTree(ShopFolder.shipped("schema/" + name + ".schema.json"));
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  private static List<String> errors(String name, String json) {
    Schema schema =
        SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
            .getSchema(ShopFolder.shipped("schema/" + name + ".schema.json"), InputFormat.JSON);
    return schema.validate(json, InputFormat.JSON).stream().map(Object::toString).toList();
  }

  @ParameterizedTest
  @ValueSource(strings = {"compounds", "primers", "rules"})
  void the_shipped_table_follows_its_schema(String name) {
    assertEquals(List.of(), errors(name, ShopFolder.shipped(name + ".json")));
  }

  @ParameterizedTest
  @ValueSource(strings = {"compounds", "primers", "rules"})
  void the_schema_follows_the_rules_of_schemas(String name) {
    Schema meta =
        SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
            .getSchema(
                com.networknt.schema.SchemaLocation.of(
                    "https://json-schema.org/draft/2020-12/schema"));
    assertEquals(
        List.of(),
        meta.validate(ShopFolder.shipped("schema/" + name + ".schema.json"), InputFormat.JSON));
  }

  @ParameterizedTest
  @ValueSource(strings = {"compounds", "primers", "rules", "shop"})
  void no_object_takes_unknown_fields(String name) {
    List<JsonNode> objects = new ArrayList<>();
    collect(schema(name), objects);
    assertTrue(objects.size() > 1);
    for (JsonNode object : objects) {
      assertFalse(object.path("additionalProperties").asBoolean(true), object.toString());
    }
  }

  private static void collect(JsonNode node, List<JsonNode> objects) {
    if (node.path("type").asText().equals("object")) {
      objects.add(node);
    }
    node.forEach(child -> collect(child, objects));
  }

  @ParameterizedTest
  @ValueSource(strings = {"compounds", "primers"})
  void every_number_is_described_with_its_unit(String name) {
    List<String> without = new ArrayList<>();
    undescribed(schema(name), "", false, without);
    assertEquals(List.of(), without);
  }

  /** A number is described by itself or by the object or list right above. */
  private static void undescribed(JsonNode node, String path, boolean above, List<String> without) {
    boolean described = above || node.has("description");
    if (node.path("type").asText().equals("number") && !described) {
      without.add(path);
    }
    node.path("properties")
        .properties()
        .forEach(
            e ->
                undescribed(
                    e.getValue(), path + "." + e.getKey(), node.has("description"), without));
    if (node.has("items")) {
      undescribed(node.get("items"), path + "[]", false, without);
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "compounds | \"gapUm\": { | \"gapUmm\": {",
        "compounds | \"low\": -12 | \"low\": \"-12\"",
        "compounds | \"low\": -12 | \"low\": -51",
        "compounds | \"format\": 1 | \"format\": 2",
        "compounds | \"permanence\": \"lasting\" | \"permanence\": \"for ever\"",
        "compounds | \"stage\": \"fixture\" | \"stage\": \"full\"",
        "compounds | \"source\": \"common practice, no source\" | \"source\": \" \"",
        "compounds | \"confidence\": \"low\" | \"confidence\": \"sure\"",
        "primers | \"onPartDays\" | \"onPartHours\"",
        "primers | \"strengthFactor\": { \"low\": 0.7 | \"strengthFactor\": { \"low\": 7",
        "rules | \"is\": \"stress-cracks\" | \"is\": \"stress-crack\"",
        "rules | \"fact\": \"fit\", \"is\" | \"fact\": \"gap.likelyUm\", \"is\"",
        "rules | \"above\": 760 | \"above\": 760, \"below\": 900",
        "rules | \"above\": \"class.gapHighUm\" | \"above\": \"class.role\"",
        "rules | \"is\": \"stress-cracks\" | \"is\": []",
        "rules | \"verdict\": \"prefers\" | \"verdict\": \"likes\"",
      })
  void schema_and_reader_refuse_the_same(String name, String right, String wrong)
      throws IOException {
    String shipped = ShopFolder.shipped(name + ".json");
    assertTrue(shipped.contains(right), right);
    int at = shipped.indexOf(right);
    String broken = shipped.substring(0, at) + wrong + shipped.substring(at + right.length());
    assertFalse(errors(name, broken).isEmpty(), wrong);
    java.nio.file.Path folder = java.nio.file.Files.createTempDirectory("shop");
    ShopFolder shop = new ShopFolder(folder).put(name + ".json", broken);
    assertFalse(shop.problems(name + ".json").isEmpty());
    java.nio.file.Files.delete(folder.resolve(name + ".json"));
    java.nio.file.Files.delete(folder);
  }

  @Test
  void the_rule_schema_knows_every_fact_and_its_words() {
    JsonNode defs = schema("rules").get("$defs");
    Set<String> inSchema = new TreeSet<>(texts(defs.get("numberFact").get("enum")));
    for (JsonNode one : defs.get("condition").get("oneOf")) {
      JsonNode fact = one.path("properties").path("fact");
      if (fact.has("enum")) {
        List<String> facts = texts(fact.get("enum"));
        inSchema.addAll(facts);
        for (String id : facts) {
          List<String> words = FactWords.of(Fact.named(id).orElseThrow());
          JsonNode first = one.get("properties").get("is").get("anyOf").get(0);
          assertEquals(words, first.has("enum") ? texts(first.get("enum")) : List.of(), id);
        }
      }
    }
    assertEquals(new TreeSet<>(Arrays.stream(Fact.values()).map(Fact::id).toList()), inSchema);
  }

  private static List<String> texts(JsonNode list) {
    List<String> texts = new ArrayList<>();
    list.forEach(n -> texts.add(n.asText()));
    return texts;
  }
}
