package annulus.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.OrderText;
import annulus.cli.CommandLine;
import annulus.exchange.Damage;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.URLEncoder;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The board answers as the command line does, and stands whatever is sent to it. */
class ApiTrustTest extends OneBoard {
  private static final List<String> PATHS =
      List.of(
          "/api/advice",
          "/api/jobs",
          "/api/promise",
          "/api/cabinet/movements",
          "/api/labels",
          "/api/fit",
          "/api/batch",
          "/api/learn",
          "/api/ready",
          "/api/cabinet/ledger");

  /** That of the demonstration shop. */
  private static final String ZONE = "Europe/Vienna";

  private static OrderText drawn(Random random) {
    List<String> metals = List.of("steel-plain", "brass-c360", "aluminium-6061", "stainless-316");
    List<String> primers = List.of("none", "primer-solvent", "primer-dry");
    OrderText order =
        new OrderText()
            .radialGapUm(random.nextInt(300) - 60)
            .set("part.material", metals.get(random.nextInt(metals.size())))
            .set("bore.material", metals.get(random.nextInt(metals.size())))
            .set("primer", random.nextInt(3) == 0 ? null : primers.get(random.nextInt(3)))
            .set("temperatureC", random.nextInt(50) - 5)
            .set("consequence", random.nextBoolean() ? "stranding" : "injury");
    return random.nextBoolean() ? order.set("load.axialN", 1 + random.nextInt(3000)) : order;
  }

  @Test
  void the_board_gives_the_very_bytes_of_the_command_line() throws Exception {
    Random random = new Random(20261125);
    int yes = 0;
    for (int i = 0; i < 120; i++) {
      String json = drawn(random).json();
      Path file = Files.writeString(folder.resolve("order.json"), json);
      HttpResponse<String> answer = sent("/api/advice", json.getBytes(StandardCharsets.UTF_8));
      assertEquals(200, answer.statusCode(), answer.body());
      String said = CommandLine.prints("advise", file.toString(), "--json");
      assertEquals(said, answer.body());
      yes += said.contains("\"use-compound\"") ? 1 : 0;
    }
    assertTrue(yes > 20 && yes < 115, yes + " yes");
  }

  /** The lines that decide: what to do, from when, and what it holds. */
  private static List<String> deciding(String text) {
    List<String> lines = text.lines().toList();
    List<String> kept = new ArrayList<>(List.of(lines.get(0)));
    boolean hold = false;
    for (String line : lines) {
      hold = line.startsWith("Hold") || (hold && !line.isBlank());
      if (hold || line.startsWith("Earliest") || line.startsWith("  Ruled by")) {
        kept.add(line);
      }
    }
    return kept;
  }

  private static String code(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }

  @Test
  void the_bench_page_gives_the_hand_back_class_and_hold_of_the_command_line() throws Exception {
    Random random = new Random(20261126);
    List<String> metals = List.of("steel-plain", "brass-c360", "aluminium-6061", "stainless-316");
    int dated = 0;
    for (int i = 0; i < 40; i++) {
      String bore = metals.get(random.nextInt(4));
      String part = metals.get(random.nextInt(4));
      String size = String.format(Locale.ROOT, "%.3f", 30 + random.nextInt(200) / 1000.0);
      int temperature = random.nextInt(40);
      String consequence = random.nextBoolean() ? "stranding" : "injury";
      String order =
          new OrderText()
              .set("job", null)
              .set("bore.readingsMm", List.of(size))
              .set("bore.material", bore)
              .set("part.material", part)
              .set("part.readingsMm", List.of("29.998"))
              .set("temperatureC", temperature)
              .set("temperaturePlusMinusC", null)
              .set("serviceLowC", null)
              .set("serviceHighC", 70)
              .set("consequence", consequence)
              .set("start", "2027-03-12T10:00")
              .set("zone", ZONE)
              .json();
      Path file = Files.writeString(folder.resolve("order.json"), order);
      List<String> said = deciding(CommandLine.prints("advise", file.toString(), "--why"));
      String path = board.form("/bench/new", "").headers().firstValue("Location").orElseThrow();
      HttpResponse<String> page =
          board.form(
              path,
              "version=1&act=show&boreMaterial="
                  + bore
                  + "&partMaterial="
                  + part
                  + "&boreFinish=ground&partFinish=ground&boreState=clean&partState=clean"
                  + "&boreInstrument=bore-micrometer-three-point&partInstrument=outside-micrometer"
                  + "&bore-1="
                  + size
                  + "&part-1=29.998&engagement=20&primer=none&serviceHigh=70&temperature="
                  + temperature
                  + "&consequence="
                  + consequence
                  + "&start="
                  + code("2027-03-12T10:00"));
      String shown = board.get(path).body();
      assertTrue(page.statusCode() < 400, page.body());
      Matcher whole = Pattern.compile("(?s)<pre[^>]*>(.*?)</pre>").matcher(shown);
      assertTrue(whole.find(), shown);
      String text =
          whole
              .group(1)
              .replace("&lt;", "<")
              .replace("&gt;", ">")
              .replace("&quot;", "\"")
              .replace("&#39;", "'")
              .replace("&amp;", "&");
      assertEquals(said, deciding(text));
      dated += said.stream().anyMatch(l -> l.startsWith("Earliest")) ? 1 : 0;
    }
    assertTrue(dated > 5, dated + " with a time");
  }

  private HttpResponse<String> sent(String path, byte[] body) {
    return board.send(
        HttpRequest.newBuilder(board.uri(path))
            .header("Content-Type", "application/json")
            .POST(HttpRequest.BodyPublishers.ofByteArray(body)));
  }

  private List<byte[]> good() throws Exception {
    List<byte[]> all = new ArrayList<>();
    try (Stream<Path> files = Files.list(Path.of("demo-data/orders"))) {
      for (Path file : files.sorted().toList()) {
        all.add(Files.readAllBytes(file));
      }
    }
    ObjectNode promise = RunningBoard.JSON.createObjectNode().put("options", true);
    promise.set("order", RunningBoard.order("01-good-fit.json"));
    ObjectNode use = RunningBoard.JSON.createObjectNode();
    use.put("who", "Mira").put("kind", "use").put("lot", "L-1").put("ml", 1).put("job", "J");
    ObjectNode fit =
        RunningBoard.JSON.createObjectNode().put("bore", "35.012").put("measuredAtC", 20);
    fit.putArray("fit").add("35 H7").add("35 k6");
    for (String file : List.of("jobs.csv", "observations.csv", "stock.csv")) {
      all.add(RunningBoard.demo(file).getBytes(StandardCharsets.UTF_8));
    }
    for (ObjectNode node : List.of(promise, use, fit, RunningBoard.label(), board.newJob("HL-1"))) {
      all.add(node.toString().getBytes(StandardCharsets.UTF_8));
    }
    return all;
  }

  @Test
  void any_body_is_answered_or_refused_in_words() throws Exception {
    List<byte[]> good = good();
    int refused = 0;
    int cases = 600 * Math.min(Damage.TIMES, 40);
    for (int i = 0; i < cases; i++) {
      Random random = new Random(9_000_000_000L + i);
      byte[] body = Damage.done(good, random);
      HttpResponse<String> answer = sent(PATHS.get(random.nextInt(PATHS.size())), body);
      assertTrue(
          answer.statusCode() < 500,
          () -> answer.body() + new String(body, StandardCharsets.UTF_8));
      assertFalse(answer.body().contains("Exception"), answer.body());
      assertFalse(answer.body().contains("\tat "), answer.body());
      if (answer.headers().firstValue("Content-Type").orElse("").contains("json")) {
        RunningBoard.json(answer);
      }
      refused += answer.statusCode() >= 400 ? 1 : 0;
    }
    assertTrue(refused > cases / 3, refused + " refused");
    assertEquals(200, board.get("/api/jobs").statusCode(), "the board still stands");
  }
}
