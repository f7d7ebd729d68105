package annulus.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.Advice;
import annulus.advice.OrderText;
import annulus.report.JobCard;
import annulus.report.JsonReport;
import annulus.report.TextReport;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.lifecycle.AfterContainer;

/** Whatever an order holds, it is answered or refused with a place and a reason; nothing else. */
class BrokenOrderPropertyTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final List<String> DEMOS = demos();
  private static int answered;
  private static int refused;

  /** Values that a slip of the pen or a broken program may leave. */
  private static final List<String> ODD =
      List.of(
          "null",
          "true",
          "false",
          "0",
          "-0",
          "-1",
          "1",
          "0.5",
          "7",
          "11",
          "20",
          "25.4",
          "41.9",
          "44.5",
          "46",
          "60",
          "68",
          "100",
          "500",
          "1000",
          "4197",
          "1e300",
          "-1e300",
          "1e-300",
          "12345678901234567890",
          "[]",
          "{}",
          "[[]]",
          "[1]",
          "{\"mm\": 42}",
          "\"\"",
          "\" \"",
          "\"none\"",
          "\"41,97\"",
          "\"1.652 in\"",
          "\"64 F\"",
          "\"nan\"",
          "\"yes\"",
          "\"both\"",
          "\"\\u0000\"",
          "\"\\ud800\"",
          "\"\\u2028\"",
          "\"ı\"",
          "\"2027-03-28T01:30\"",
          "\"2027-03-11T10:00+18:00\"",
          "\"-999999999-01-01T00:00\"",
          "\"Z\"",
          "\"+18:00\"",
          "\"Pacific/Chatham\"",
          "\"primer-dry\"",
          "\"paste-rebuild\"",
          "\"carbon-epoxy\"",
          "\"copper\"",
          "\"painted\"",
          "\"oily\"",
          "\"caliper-150\"",
          "\"shock\"",
          "\"nuisance\"");

  private static List<String> demos() {
    try (Stream<Path> files = Files.list(Path.of("demo-data/orders"))) {
      List<String> texts = new ArrayList<>();
      for (Path file : files.sorted().toList()) {
        texts.add(Files.readString(file));
      }
      return texts;
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  @AfterContainer
  static void both_outcomes_were_seen() {
    assertTrue(answered > 150, answered + " broken orders were answered");
    assertTrue(refused > 1000, refused + " broken orders were refused");
  }

  @Property(tries = 1500, seed = "20261127", shrinking = ShrinkingMode.OFF)
  void an_order_with_changed_fields_is_answered_or_refused(@ForAll long seed) throws IOException {
    Random random = new Random(seed);
    JsonNode root = JSON.readTree(DEMOS.get(random.nextInt(DEMOS.size())));
    int changes = 1 + random.nextInt(2);
    for (int i = 0; i < changes; i++) {
      change(root, random);
    }
    check(JSON.writerWithDefaultPrettyPrinter().writeValueAsBytes(root));
  }

  private static void change(JsonNode root, Random random) throws IOException {
    List<JsonNode> holders = new ArrayList<>();
    holders(root, holders);
    JsonNode holder = holders.get(random.nextInt(holders.size()));
    JsonNode odd = JSON.readTree(ODD.get(random.nextInt(ODD.size())));
    if (holder instanceof ObjectNode object) {
      List<String> names = new ArrayList<>();
      object.fieldNames().forEachRemaining(names::add);
      if (names.isEmpty() || random.nextInt(8) == 0) {
        object.set(new String[] {"load", "gap", "movedAt", "x", "duty"}[random.nextInt(5)], odd);
        return;
      }
      String name = names.get(random.nextInt(names.size()));
      switch (random.nextInt(4)) {
        case 0 -> object.remove(name);
        case 1 -> object.set(names.get(random.nextInt(names.size())), object.get(name));
        default -> object.set(name, odd);
      }
    } else if (holder instanceof ArrayNode array && !array.isEmpty()) {
      array.set(random.nextInt(array.size()), odd);
    }
  }

  private static void holders(JsonNode node, List<JsonNode> into) {
    if (node.isContainerNode()) {
      into.add(node);
      node.forEach(child -> holders(child, into));
    }
  }

  @Property(tries = 700, seed = "20261128", shrinking = ShrinkingMode.OFF)
  void an_order_with_changed_bytes_is_answered_or_refused(@ForAll long seed) throws IOException {
    Random random = new Random(seed);
    String demo = DEMOS.get(random.nextInt(DEMOS.size()));
    byte[] bytes = demo.getBytes(StandardCharsets.UTF_8);
    int changes = 1 + random.nextInt(2);
    for (int i = 0; i < changes; i++) {
      int at = random.nextInt(bytes.length);
      String near = "0123456789.,-:\"{}[] \nxe";
      bytes[at] =
          random.nextInt(4) == 0
              ? (byte) random.nextInt(256)
              : (byte) near.charAt(random.nextInt(near.length()));
    }
    check(bytes);
  }

  private static void check(byte[] bytes) throws IOException {
    try {
      Advice advice =
          OrderText.ADVISOR.advise(
              new OrderReader(OrderText.KNOWLEDGE, OrderText.NOW, ZoneOffset.UTC)
                  .json("order.json", DataFiles.utf8(new ByteArrayInputStream(bytes))));
      told(advice);
      answered++;
    } catch (InputRefused e) {
      refused++;
      assertFalse(e.problems().isEmpty());
      e.problems().forEach(BrokenOrderPropertyTest::clear);
    }
  }

  /** Every face of the answer can be made. */
  private static void told(Advice advice) throws IOException {
    String text = TextReport.of(advice, OrderText.KNOWLEDGE.catalog(), true);
    assertFalse(text.lines().findFirst().orElse("").isBlank());
    assertFalse(text.contains("NaN") || text.contains("Infinity"), text);
    JSON.readTree(JsonReport.of(advice, OrderText.KNOWLEDGE.catalog()));
    assertTrue(JobCard.of(advice, OrderText.KNOWLEDGE.catalog()).endsWith("</html>\n"));
  }

  private static void clear(PlacedProblem problem) {
    String text = problem.toString();
    assertEquals("order.json", problem.file());
    assertTrue(problem.line() > 0 && problem.column() > 0, text);
    assertFalse(problem.problem().isBlank(), text);
    assertFalse(problem.allowed().isBlank(), text);
    assertFalse(text.contains("\n") || text.contains("Exception"), text);
  }
}
