package annulus.web;

import static annulus.web.RunningBoard.json;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The form at the bench holds what an order can hold, and loses nothing of it. */
class BenchFormTest {
  @TempDir Path folder;
  private RunningBoard board;

  @BeforeEach
  void start() {
    board = RunningBoard.on("jdbc:sqlite:" + folder.resolve("board.db"));
  }

  @AfterEach
  void stop() {
    board.close();
  }

  /** Demonstration orders go through the form and back without losing or changing a field. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "01-good-fit.json",
        "02-good-fit-primed.json",
        "06-stainless.json",
        "10-interference.json",
        "11-oversize-rebuild.json",
        "12-hot-service.json",
        "13-must-come-apart.json",
        "16-stated-gap.json"
      })
  void what_the_form_can_show_comes_back_as_it_was(String file) {
    ObjectNode body = board.newJob("HL-9");
    body.set("order", RunningBoard.order(file));
    String id = json(board.post("/api/jobs", body)).get("id").asText();
    String before = json(board.get("/api/jobs/" + id)).at("/advice/gap").toString();
    String page = board.get("/job/" + id).body();
    assertTrue(page.contains("Change the order"), page);
    HttpResponse<String> draft = board.form("/job/" + id + "/edit", "version=1&who=Ede");
    String path = draft.headers().firstValue("Location").orElseThrow();
    StringBuilder form = new StringBuilder("act=change&who=Ede");
    Matcher typed =
        Pattern.compile("<input[^>]* name=\"([^\"]*)\"[^>]* value=\"([^\"]*)\"([^>]*)>")
            .matcher(board.get(path).body());
    while (typed.find()) {
      boolean off = typed.group().contains("checkbox") && !typed.group().contains("checked");
      form.append(off ? "" : "&" + typed.group(1) + "=" + coded(typed.group(2)));
    }
    Matcher chosen =
        Pattern.compile(
                "<select[^>]* name=\"([^\"]*)\"[^>]*>(?:(?!</select>).)*?value=\"([^\"]*)\" selected",
                Pattern.DOTALL)
            .matcher(board.get(path).body());
    while (chosen.find()) {
      form.append("&" + chosen.group(1) + "=" + coded(chosen.group(2)));
    }
    HttpResponse<String> changed = board.form(path, form.toString());
    assertEquals(303, changed.statusCode(), form + changed.body());
    assertEquals(before, json(board.get("/api/jobs/" + id)).at("/advice/gap").toString());
  }

  /** 30.0 of an order in JSON stood in the field as 3E+1, and was refused when it was saved. */
  @Test
  void a_round_number_is_shown_as_somebody_types_it() {
    ObjectNode body = board.newJob("HL-9");
    body.set("order", RunningBoard.order("01-good-fit.json").put("temperatureC", 30.0));
    String id = json(board.post("/api/jobs", body)).get("id").asText();
    HttpResponse<String> draft = board.form("/job/" + id + "/edit", "version=1&who=Ede");
    String form = board.get(draft.headers().firstValue("Location").orElseThrow()).body();
    assertTrue(form.contains("name=\"temperature\" value=\"30\""), form);
  }

  private static String coded(String text) {
    return java.net.URLEncoder.encode(text, StandardCharsets.UTF_8);
  }

  @Test
  void a_load_a_bearing_and_a_known_gap_are_taken_at_the_bench() {
    String path = board.form("/bench/new", "").headers().firstValue("Location").orElseThrow();
    String faces =
        "&boreMaterial=steel-plain&partMaterial=steel-bearing&engagement=11&temperature=18";
    String bearing = "version=1&bore-1=42.03&boreInstrument=bore-gauge-dial&partBearing=42" + faces;
    String answer = board.form(path + "/save", bearing).body();
    assertTrue(answer.contains("radial"), answer);
    String known = "version=2&gap=25&gapPlusMinus=5" + faces;
    assertTrue(board.form(path + "/save", known).body().contains("nominal diameter"));
    known = known.replace("version=2", "version=3") + "&diameter=42&repeats=static&torqueNm=";
    String light = board.form(path + "/save", known + "5").body();
    assertTrue(light.contains("25.0 ± 5.0 µm (per side)"), light);
    String heavy =
        board.form(path + "/save", known.replace("version=3", "version=4") + "900").body();
    assertTrue(light.contains("USE"), light);
    assertFalse(heavy.contains("Not safe before"), heavy);
    String primed = known.replace("version=3", "version=5") + "5&primerOn=bore";
    assertTrue(board.form(path + "/save", primed).body().contains(">Primer</a>"));
  }

  /**
   * The diary's worst find: the warm bench's 18 °C was left in the form, the cellar was chosen, and
   * the answer was that of 18 °C without a word.
   */
  @Test
  void a_temperature_beside_a_place_is_asked_about_and_not_guessed() {
    String path = board.form("/bench/new", "").headers().firstValue("Location").orElseThrow();
    String order =
        "&bore-1=42.03&boreInstrument=bore-gauge-dial&partBearing=42"
            + "&boreMaterial=steel-plain&partMaterial=steel-bearing&engagement=11&place=cellar";
    String cellar = board.form(path + "/save", "version=1" + order).body();
    assertTrue(cellar.contains("Not safe before"), cellar);
    String both = board.form(path + "/save", "version=2&temperature=18" + order).body();
    assertFalse(both.contains("Not safe before"), both);
    assertTrue(
        both.contains("href=\"#place\"")
            && both.contains(">Where it cures</a>: a place to cure stands beside a temperature"),
        both);
  }

  /** Every field of the form has words of its own for the messages about it. */
  @Test
  void no_message_calls_a_field_by_its_short_name() {
    String path = board.form("/bench/new", "").headers().firstValue("Location").orElseThrow();
    Matcher field =
        Pattern.compile("<(?:input|select)[^>]* name=\"([^\"]*)\"").matcher(board.get(path).body());
    int fields = 0;
    while (field.find()) {
      String name = field.group(1);
      boolean own = !java.util.Set.of("version", "who", "act").contains(name);
      assertTrue(!own || !BenchLabels.of(name).equals(name), name);
      fields += own ? 1 : 0;
    }
    assertTrue(fields > 30, "fields: " + fields);
    assertEquals("Bore, reading 2 depth", BenchLabels.of("bore-2-depth"));
    assertEquals("Readings of the part", BenchLabels.ofOrder("part.readingsMm"));
  }
}
