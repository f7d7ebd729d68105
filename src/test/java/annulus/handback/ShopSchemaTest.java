package annulus.handback;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The schema and the invented shop against each other and against {@link OpeningHours}. */
class ShopSchemaTest {
  private static final String SHOP = read("demo-data/shop.json");
  private static final Schema SCHEMA =
      SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
          .getSchema(read("data/schema/shop.schema.json"), InputFormat.JSON);

  private static String read(String file) {
    try {
      return Files.readString(Path.of(file));
    } catch (IOException e) {
      throw new IllegalStateException(file, e);
    }
  }

  private static boolean valid(String json) {
    return SCHEMA.validate(json, InputFormat.JSON).isEmpty();
  }

  @Test
  void the_invented_shop_follows_the_schema() {
    assertEquals(List.of(), SCHEMA.validate(SHOP, InputFormat.JSON));
  }

  @Test
  void the_least_a_shop_must_say_is_format_zone_and_hours() {
    assertTrue(valid("{\"format\":1,\"zone\":\"Europe/Vienna\",\"hours\":{}}"));
    assertFalse(valid("{\"zone\":\"Europe/Vienna\",\"hours\":{}}"));
    assertFalse(valid("{\"format\":1,\"hours\":{}}"));
    assertFalse(valid("{\"format\":1,\"zone\":\"Europe/Vienna\"}"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "\"format\": 1 | \"format\": 2",
        "\"format\": 1 | \"format\": 1, \"hollidays\": []",
        "\"Europe/Vienna\" | \"CET+1\"",
        "\"monday\" | \"Monday\"",
        "\"09:00\" | \"9:00\"",
        "\"13:00\" | \"24:01\"",
        "\"from\": \"09:00\" | \"from\": \"24:00\"",
        "\"2027-03-17\" | \"17.03.2027\"",
        "\"Stocktaking\" | \" \"",
        "\"handOverCheckMinutes\": 15 | \"handOverCheckMinutes\": -1",
        "\"roundUpToMinutes\": 15 | \"roundUpToMinutes\": 7"
      })
  void a_field_that_is_wrong_is_refused(String right, String wrong) {
    assertTrue(SHOP.contains(right), right);
    assertFalse(valid(SHOP.replace(right, wrong)), wrong);
  }

  @Test
  void the_invented_shop_fits_the_model() throws IOException {
    JsonNode shop = new ObjectMapper().readTree(SHOP);
    Map<DayOfWeek, List<OpenSpan>> week = new EnumMap<>(DayOfWeek.class);
    for (DayOfWeek day : DayOfWeek.values()) {
      week.put(day, spans(shop.get("hours").path(day.name().toLowerCase(Locale.ROOT))));
    }
    List<Closure> closures = new ArrayList<>();
    for (JsonNode closure : shop.get("closures")) {
      LocalDate from = LocalDate.parse(closure.get("from").asText());
      LocalDate to = LocalDate.parse(closure.path("to").asText(from.toString()));
      closures.add(new Closure(from, to, closure.get("reason").asText()));
    }
    List<ExtraOpening> extras = new ArrayList<>();
    for (JsonNode extra : shop.get("extraOpenings")) {
      LocalDate date = LocalDate.parse(extra.get("date").asText());
      extras.add(new ExtraOpening(date, spans(extra.get("spans"))));
    }
    OpeningHours hours =
        new OpeningHours(ZoneId.of(shop.get("zone").asText()), week, closures, extras);
    assertEquals(2, hours.spansOn(LocalDate.of(2027, 3, 11)).size());
    assertEquals(List.of(OpenSpan.of("09:00", "12:00")), hours.spansOn(LocalDate.of(2026, 12, 24)));
    assertEquals(List.of(), hours.spansOn(LocalDate.of(2027, 1, 6)));
  }

  private static List<OpenSpan> spans(JsonNode list) {
    List<OpenSpan> spans = new ArrayList<>();
    list.forEach(s -> spans.add(OpenSpan.of(s.get("from").asText(), s.get("to").asText())));
    return spans;
  }
}
