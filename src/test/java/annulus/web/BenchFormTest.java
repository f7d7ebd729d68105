package annulus.web;

import static annulus.web.RunningBoard.json;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The form at the bench holds what an order can hold, and loses nothing of it. */
class BenchFormTest extends OneBoard {
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
    String form = "act=change&who=Ede" + board.typed(path);
    HttpResponse<String> changed = board.form(path, form);
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

  private String draftOf(String id) {
    HttpResponse<String> draft = board.form("/job/" + id + "/edit", "version=1&who=Ede");
    return draft.headers().firstValue("Location").orElseThrow();
  }

  private static String change(String id, int draftVersion, int jobVersion) {
    return "act=change&who=Ede&reference=HL-9&title=a+cup&engagement=11&boreMaterial=steel-plain"
        + "&partMaterial=steel-alloy&boreInstrument=bore-gauge-dial&bore-1=41.966"
        + "&partInstrument=outside-micrometer&temperature=18&part-1=41.918&version="
        + (draftVersion + "&ofJob=" + id + "&ofVersion=" + jobVersion);
  }

  /** The order was given more by JSON while somebody had it open at the bench. */
  @Test
  void what_an_order_came_to_hold_meanwhile_is_told_on_the_form_before_it_is_lost() {
    JsonNode job = board.entered("HL-9");
    String id = job.get("id").asText();
    String path = draftOf(id);
    assertFalse(board.get(path).body().contains("this form can't show"));
    ObjectNode order = ((ObjectNode) board.newJob("HL-9").get("order")).put("confidence", 0.99);
    ((ObjectNode) order.get("bore")).put("arrivesAtC", 5);
    ObjectNode act = RunningBoard.act(job, "Ines").put("title", "a cup");
    act.set("order", order);
    assertEquals(200, board.act(job, "order", act).statusCode());
    HttpResponse<String> told = board.form(path, change(id, 1, 1));
    assertEquals(409, told.statusCode());
    for (String page : new String[] {told.body(), board.get(path).body()}) {
      assertTrue(page.contains("takes out of its order what this form can't show"), page);
      assertTrue(page.contains("<li>How sure the answer has to be, of 1: 0.99</li>"), page);
      assertTrue(page.contains("<li>Bore, temperature when the joint is closed, °C: 5</li>"), page);
    }
  }

  @Test
  void an_order_that_the_form_cannot_show_is_not_opened_with_it() {
    ObjectNode body = board.newJob("HL-9");
    ((ObjectNode) body.get("order")).put("confidence", 0.99).put("zone", "Europe/Dublin");
    String id = json(board.post("/api/jobs", body)).get("id").asText();
    HttpResponse<String> refused = board.form("/job/" + id + "/edit", "version=1&who=Ede");
    assertEquals(422, refused.statusCode());
    String words =
        "its form can't show all of it: How sure the answer has to be, of 1: 0.99; Time zone: Europe/Dublin."
            + " Send the whole";
    assertTrue(refused.body().contains(words), refused.body());
    assertTrue(board.get("/job/" + id).body().contains(words));
  }

  @Test
  void a_planned_start_stays_when_the_order_is_changed() {
    ObjectNode body = board.newJob("HL-9");
    ((ObjectNode) body.get("order")).put("start", "2027-03-15T10:00");
    String id = json(board.post("/api/jobs", body)).get("id").asText();
    String path = draftOf(id);
    String page = board.get(path).body();
    assertTrue(page.contains("name=\"start\" value=\"2027-03-15T10:00\""), page);
    String form = change(id, 1, 1) + "&start=2027-03-15T10:00";
    assertEquals(303, board.form(path, form).statusCode());
    String start = json(board.get("/api/jobs/" + id)).at("/order/start").asText();
    assertEquals("2027-03-15T09:00:00Z", start);
    String passed = board.entered("HL-8").get("id").asText();
    assertTrue(board.get(draftOf(passed)).body().contains("name=\"start\" value=\"\""));
  }

  /** A place was taken out of the shop's file while a draft still had it. */
  @Test
  void what_can_not_be_chosen_any_more_stands_in_the_form_still() {
    String path = board.form("/bench/new", "").headers().firstValue("Location").orElseThrow();
    board.form(path + "/save", "version=1&place=old+loft&boreMaterial=steel-plain");
    String page = board.get(path).body();
    assertTrue(page.contains("<option value=\"old loft\" selected"), page);
  }

  @Test
  void a_depth_without_its_reading_is_asked_about_and_not_dropped() {
    String path = board.form("/bench/new", "").headers().firstValue("Location").orElseThrow();
    String typed = "version=1" + change("", 1, 1).replaceAll("act=change|&version.*", "");
    String answer = board.form(path + "/save", typed + "&bore-2-depth=9").body();
    assertTrue(answer.contains("Please look again"), answer);
    assertTrue(board.get(path).body().contains("name=\"bore-2-depth\" value=\"9\""));
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

  private String begun() {
    return board.form("/bench/new", "who=Ede").headers().firstValue("Location").orElseThrow();
  }

  @Test
  void what_is_refused_is_called_as_on_the_form_and_leads_to_its_field() {
    String path = begun();
    String typed =
        "act=start&who=Ede&version=1&reference=HL-9&engagement=-3&bore-1=41.97&part-1=41.9";
    HttpResponse<String> refused = board.form(path, typed);
    assertEquals(422, refused.statusCode());
    String page = refused.body();
    assertTrue(page.contains("<title>Please look again"), page);
    assertTrue(page.contains("<a href=\"#engagement\">Length they share</a>: "), page);
    assertTrue(page.contains("<a href=\"#boreMaterial\">Bore, material</a>: "), page);
    assertFalse(page.contains("engagementMm"), page);
    assertFalse(page.contains("bore.material"), page);
    assertTrue(page.contains("name=\"engagement\" value=\"-3\""), page);
  }

  @Test
  void a_name_that_is_missing_is_asked_for_by_its_label() {
    String path = begun();
    HttpResponse<String> refused =
        board.form(path, change("", 1, 1).replace("act=change&who=Ede", "act=start&who="));
    assertEquals(422, refused.statusCode());
    String link = "<a href=\"#bench-who\">Your name or initials</a>: ";
    assertTrue(refused.body().contains(link), refused.body());
  }

  @Test
  void a_fold_that_holds_something_is_open() {
    String path = begun();
    assertFalse(board.get(path).body().contains("<details open"));
    board.form(path, "act=show&version=1&serviceHigh=80");
    String page = board.get(path).body();
    assertTrue(page.contains("<details open><summary>Load, and heat"), page);
    assertFalse(page.contains("<details open><summary>More"), page);
  }
}
