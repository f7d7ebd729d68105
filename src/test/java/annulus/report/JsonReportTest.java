package annulus.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.Advice;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The JSON answer against its schema and against the answer it was made from. */
class JsonReportTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Schema SCHEMA =
      SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
          .getSchema(read("data/schema/advice.schema.json"), InputFormat.JSON);

  private static String read(String file) {
    try {
      return Files.readString(Path.of(file));
    } catch (IOException e) {
      throw new IllegalStateException(file, e);
    }
  }

  private static String json(Advice advice) {
    return JsonReport.of(advice, SampleOrders.CATALOG);
  }

  private static JsonNode tree(Advice advice) throws IOException {
    return JSON.readTree(json(advice));
  }

  @Test
  void every_sample_follows_the_schema() {
    for (Map.Entry<String, Advice> sample : SampleOrders.all().entrySet()) {
      assertEquals(
          List.of(), SCHEMA.validate(json(sample.getValue()), InputFormat.JSON), sample.getKey());
    }
  }

  @Test
  void the_schema_refuses_what_it_does_not_know() {
    String json = json(SampleOrders.goodFit());
    assertTrue(refuses(json.replaceFirst("\"format\": 1", "\"format\": 2")));
    assertTrue(refuses(json.replaceFirst("\"format\": 1", "\"format\": 1,\n  \"speed\": 3")));
    assertTrue(refuses(json.replaceFirst("\"meanRadialUm\"", "\"meanUm\"")));
    assertTrue(refuses(json.replaceFirst("\\+01:00", "")));
    assertTrue(refuses(json.replaceFirst("\"use-compound\"", "\"use\"")));
  }

  private static boolean refuses(String json) {
    return !SCHEMA.validate(json, InputFormat.JSON).isEmpty();
  }

  @Test
  void every_object_in_the_schema_is_closed() throws IOException {
    List<JsonNode> open = new ArrayList<>();
    walk(JSON.readTree(read("data/schema/advice.schema.json")), open);
    assertEquals(List.of(), open);
  }

  private static void walk(JsonNode node, List<JsonNode> open) {
    if (node.has("properties") && node.path("additionalProperties").asBoolean(true)) {
      open.add(node);
    }
    node.forEach(child -> walk(child, open));
  }

  @Test
  void the_same_answer_is_written_the_same_byte_for_byte() {
    for (Map.Entry<String, Advice> sample : SampleOrders.all().entrySet()) {
      String again = json(SampleOrders.ADVISOR.advise(sample.getValue().order()));
      assertEquals(json(sample.getValue()), again, sample.getKey());
      assertFalse(again.contains("\r"));
      assertTrue(again.endsWith("}\n"));
    }
  }

  @Test
  void every_length_of_the_gap_says_radial_or_diametral_and_the_two_agree() throws IOException {
    for (Map.Entry<String, Advice> sample : SampleOrders.all().entrySet()) {
      JsonNode gap = tree(sample.getValue()).get("gap");
      int pairs = 0;
      for (Iterator<String> names = gap.fieldNames(); names.hasNext(); ) {
        String name = names.next();
        if (name.endsWith("RadialUm")) {
          String across = name.replace("RadialUm", "DiametralUm");
          assertEquals(2 * gap.get(name).asDouble(), gap.get(across).asDouble(), 0.0011, name);
          pairs++;
        } else if (name.endsWith("Um")) {
          assertTrue(name.endsWith("DiametralUm") || name.equals("oneSidedFaceToFaceUm"), name);
        }
      }
      assertEquals(11, pairs);
    }
  }

  @Test
  void the_hand_back_is_the_same_instant_and_never_an_earlier_one() throws IOException {
    for (Advice advice : SampleOrders.all().values()) {
      JsonNode handBack = tree(advice).get("handBack");
      assertEquals(advice.handBack().isEmpty(), handBack.isNull());
      if (advice.handBack().isPresent()) {
        OffsetDateTime at = OffsetDateTime.parse(handBack.get("at").asText());
        assertEquals(advice.handBack().get().at(), at.toInstant());
        for (JsonNode condition : handBack.get("conditions")) {
          OffsetDateTime asked = OffsetDateTime.parse(condition.get("at").asText());
          assertFalse(asked.isAfter(at), condition.toString());
        }
      }
    }
  }

  @Test
  void a_reason_is_the_same_in_json_and_in_text() throws IOException {
    for (Advice advice : SampleOrders.all().values()) {
      String text = TextReport.of(advice, SampleOrders.CATALOG, false).replaceAll("\\s+", " ");
      for (JsonNode caution : tree(advice).get("cautions")) {
        assertTrue(text.contains(caution.get("reason").asText()), caution.toString());
      }
    }
  }

  @Test
  void a_torn_joint_says_that_its_times_are_void() throws IOException {
    JsonNode torn = tree(SampleOrders.all().get("moved"));
    assertFalse(torn.get("cure").get("counts").asBoolean());
    assertTrue(torn.get("handBack").isNull());
  }
}
