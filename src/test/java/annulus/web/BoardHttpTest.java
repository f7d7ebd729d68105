package annulus.web;

import static annulus.web.RunningBoard.JSON;
import static annulus.web.RunningBoard.act;
import static annulus.web.RunningBoard.json;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.net.InetAddress;
import java.net.Socket;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class BoardHttpTest extends OneBoard {
  private static final java.time.ZoneId ZONE = java.time.ZoneId.of("Europe/Vienna");

  private JsonNode job(JsonNode job) {
    return json(board.get("/api/jobs/" + job.get("id").asText()));
  }

  private JsonNode closed(String reference) {
    JsonNode job = board.entered(reference);
    HttpResponse<String> response = board.act(job, "closed", act(job, "Mira"));
    assertEquals(200, response.statusCode(), response.body());
    return json(response);
  }

  @Test
  void every_page_forbids_inline_script_framing_and_guessing_of_types() {
    for (String path : List.of("/counter", "/bench", "/cabinet", "/who", "/nowhere", "/board.js")) {
      HttpResponse<String> response = board.get(path);
      String policy = response.headers().firstValue("Content-Security-Policy").orElse("");
      assertTrue(policy.contains("default-src 'none'"), path);
      assertFalse(policy.contains("unsafe"), path);
      assertEquals(
          "nosniff", response.headers().firstValue("X-Content-Type-Options").orElse(""), path);
      assertFalse(response.body().contains(" style=\""), path);
      assertFalse(response.body().matches("(?s).*<script(?![^>]*src=).*"), path);
    }
  }

  @Test
  void a_page_of_another_site_cannot_post() {
    for (String[] header :
        new String[][] {
          {"Origin", "http://evil.example"}, {"Sec-Fetch-Site", "cross-site"}, {"Origin", "null"}
        }) {
      HttpRequest.Builder request =
          HttpRequest.newBuilder(board.uri("/bench/new"))
              .header(header[0], header[1])
              .POST(HttpRequest.BodyPublishers.noBody());
      assertEquals(403, board.send(request).statusCode(), header[0]);
    }
    assertFalse(board.get("/bench").body().contains("Begun"));
  }

  @Test
  void a_name_that_somebody_else_points_here_is_refused() throws Exception {
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), board.uri("/").getPort())) {
      String request = "GET /counter HTTP/1.1\r\nHost: evil.example\r\nConnection: close\r\n\r\n";
      socket.getOutputStream().write(request.getBytes(StandardCharsets.US_ASCII));
      BufferedReader in =
          new BufferedReader(
              new InputStreamReader(socket.getInputStream(), StandardCharsets.UTF_8));
      assertTrue(in.readLine().contains(" 403 "));
    }
  }

  @Test
  void what_is_too_large_is_refused() {
    ObjectNode body = board.newJob("HL-1");
    body.put("title", "x".repeat(600_000));
    assertEquals(413, board.post("/api/jobs", body).statusCode());
  }

  @Test
  void everything_typed_is_shown_as_text() {
    ObjectNode body = board.newJob("<script>1</script>");
    body.put("title", "\"><img src=x onerror=alert(1)>");
    body.put("bore", "<i>bore</i>");
    body.put("who", "<u>Mira</u>");
    JsonNode job = json(board.post("/api/jobs", body));
    String id = job.get("id").asText();
    board.act(job, "closed", act(job, "<u>Mira</u>"));
    for (String path :
        List.of(
            "/counter", "/job/" + id, "/job/" + id + "/card", "/job/" + id + "/why", "/bench")) {
      HttpResponse<String> response = board.get(path);
      assertEquals(200, response.statusCode());
      for (String raw : List.of("<script>1", "<img", "<i>bore", "<u>Mira")) {
        assertFalse(response.body().contains(raw), path + " " + raw);
      }
    }
    assertTrue(board.get("/counter").body().contains("&lt;script&gt;1&lt;/script&gt;"));
  }

  @Test
  void the_card_carries_its_style_under_a_policy_that_names_it_alone() {
    JsonNode job = board.entered("HL-1");
    HttpResponse<String> card = board.get("/job/" + job.get("id").asText() + "/card");
    String policy = card.headers().firstValue("Content-Security-Policy").orElse("");
    assertTrue(policy.contains("style-src 'sha256-"), policy);
    assertTrue(card.body().contains("Code that opens http://127.0.0.1:"));
  }

  @Test
  void every_reason_of_a_job_stands_on_a_page_that_the_job_leads_to() {
    JsonNode job = board.entered("HL-1");
    String why = "/job/" + job.get("id").asText() + "/why";
    assertTrue(board.get("/job/" + job.get("id").asText()).body().contains(why));
    String page = board.get(why).body();
    assertTrue(page.contains("Why: every rule that spoke"), page);
    assertTrue(page.contains(job.get("decision").asText()), page);
  }

  @Test
  void two_editors_the_second_sees_both_versions_and_nothing_is_lost() {
    JsonNode seen = board.entered("HL-1");
    ObjectNode first = act(seen, "Mira").put("to", "in-work");
    assertEquals(200, board.act(seen, "state", first).statusCode());
    HttpResponse<String> second =
        board.act(seen, "state", act(seen, "Ede").put("to", "waiting-parts"));
    assertEquals(409, second.statusCode());
    assertEquals("in-work", json(second).at("/current/state").asText());
    HttpResponse<String> page =
        board.form(
            "/job/" + seen.get("id").asText() + "/state", "who=Ede&version=1&to=waiting-parts");
    assertEquals(409, page.statusCode());
    assertTrue(page.body().contains("Put it to: waiting parts."));
    assertTrue(page.body().contains("Mira changed job HL-1"));
    assertEquals("in-work", job(seen).get("state").asText());
  }

  @Test
  void a_joint_is_cured_by_the_clock_and_not_checked_before() {
    JsonNode job = closed("HL-1");
    assertEquals("curing", job.get("state").asText());
    HttpResponse<String> early = board.act(job, "state", act(job, "Ede").put("to", "checked"));
    assertEquals(422, early.statusCode());
    assertTrue(early.body().contains("not safe before"), early.body());
    board.clock.set(Instant.parse(job.get("readyAt").asText()).minusSeconds(1));
    assertEquals("curing", job(job).get("state").asText());
    board.clock.forward(Duration.ofSeconds(1));
    assertEquals("cured-to-check", job(job).get("state").asText());
    for (String to : List.of("checked", "customer-told", "collected")) {
      JsonNode now = job(job);
      assertEquals(200, board.act(now, "state", act(now, "Ede").put("to", to)).statusCode(), to);
    }
    assertEquals("collected", job(job).get("state").asText());
  }

  @Test
  void a_promise_is_never_before_the_joint_is_safe_and_the_shop_open() {
    JsonNode job = closed("HL-1");
    Instant first = Instant.parse(job.get("promisableAt").asText());
    ObjectNode early = act(job, "Ede").put("promised", first.minusSeconds(60).toString());
    assertEquals(422, board.act(job, "promise", early).statusCode());
    ObjectNode night = act(job, "Ede").put("promised", "2027-03-13T03:00:00Z");
    assertEquals(422, board.act(job, "promise", night).statusCode());
    ObjectNode good = act(job, "Ede").put("promised", first.toString());
    JsonNode told = json(board.act(job, "promise", good));
    assertEquals(first.toString(), told.get("promisedAt").asText());
    JsonNode last = told.get("changes").get(told.get("changes").size() - 1);
    assertEquals("promise", last.get("kind").asText());
    assertEquals("Ede", last.get("who").asText());
  }

  @Test
  void a_job_closed_too_late_slips_and_says_why() {
    JsonNode job = board.entered("HL-1");
    String first = job.get("promisableAt").asText();
    job = json(board.act(job, "promise", act(job, "Ede").put("promised", first)));
    assertFalse(job.get("slips").asBoolean());
    board.clock.forward(Duration.ofHours(80));
    assertTrue(job(job).get("slipWhy").asText().contains("still open"), job(job).toString());
    JsonNode late = json(board.act(job, "closed", act(job, "Mira")));
    assertTrue(late.get("slips").asBoolean());
    assertTrue(late.get("slipWhy").asText().contains("3 d 8 h"), late.get("slipWhy").asText());
    String counter = board.get("/counter").body();
    assertTrue(counter.contains("! Slips."));
    Instant kept = Instant.parse(late.get("promisableAt").asText());
    ClockWords times = new ClockWords(ZONE, board.clock);
    String large = "<span class=\"hour\">" + times.hour(kept);
    String day = "<span class=\"day\">" + times.day(kept, board.clock.instant());
    assertTrue(counter.contains(large) && counter.contains(day), "the unsafe time is large");
    assertTrue(counter.contains("can&#39;t be kept") || counter.contains("can't be kept"));
    ObjectNode again = act(late, "Ede").put("promised", late.get("promisableAt").asText());
    assertFalse(json(board.act(late, "promise", again)).get("slips").asBoolean());
  }

  @Test
  void a_cured_job_nobody_checked_is_not_promised_for_a_time_that_has_passed() {
    JsonNode job = closed("HL-1");
    board.clock.set(Instant.parse(job.get("promisableAt").asText()).plusSeconds(3600));
    Instant now = board.clock.instant();
    Instant promisable = Instant.parse(job(job).get("promisableAt").asText());
    assertTrue(promisable.isAfter(now), promisable.toString());
  }

  @Test
  void a_joint_whose_answer_is_no_cannot_be_closed() {
    ObjectNode body = board.newJob("HL-3");
    body.set("order", RunningBoard.order("03-too-loose.json"));
    JsonNode job = json(board.post("/api/jobs", body));
    assertFalse(job.get("yes").asBoolean());
    assertEquals(422, board.act(job, "closed", act(job, "Mira")).statusCode());
  }

  @Test
  void a_joint_moved_after_it_may_have_grabbed_is_never_safe_until_it_is_made_anew() {
    JsonNode job = closed("HL-1");
    board.clock.forward(Duration.ofMinutes(5));
    job = json(board.act(job, "moved", act(job, "Mira")));
    assertTrue(job.get("decision").asText().contains("STRIP AND REDO"), job.toString());
    assertTrue(job.get("readyAt").isNull());
    board.clock.forward(Duration.ofDays(30));
    assertEquals("curing", job(job).get("state").asText());
    assertEquals(422, board.act(job, "state", act(job, "Ede").put("to", "checked")).statusCode());
    assertTrue(board.get("/counter").body().contains("never safe: STRIP AND REDO"));
    job = json(board.act(job, "state", act(job, "Mira").put("to", "in-work")));
    job = json(board.act(job, "closed", act(job, "Mira")));
    assertTrue(job.get("yes").asBoolean());
    assertFalse(job.get("readyAt").isNull());
  }

  @Test
  void a_joint_cannot_be_closed_in_the_future() {
    JsonNode job = board.entered("HL-1");
    ObjectNode body = act(job, "Mira").put("at", "2027-03-11T08:30:01Z");
    assertEquals(422, board.act(job, "closed", body).statusCode());
  }

  @Test
  void undo_is_an_entry_of_its_own() {
    JsonNode job = closed("HL-1");
    JsonNode undone = json(board.act(job, "undo", act(job, "Ede")));
    assertEquals("booked", undone.get("state").asText());
    assertTrue(undone.get("closedAt").isNull());
    assertEquals(3, undone.get("changes").size());
    assertEquals(2, undone.at("/changes/2/undoes").asLong());
  }

  @Test
  void the_calendar_entry_keeps_its_uid_and_counts_its_moves() {
    JsonNode job = closed("HL-1");
    String path = "/job/" + job.get("id").asText() + "/calendar.ics";
    assertEquals(404, board.get(path).statusCode());
    job =
        json(
            board.act(
                job, "promise", act(job, "Ede").put("promised", job.get("promisableAt").asText())));
    String first = board.get(path).body();
    assertTrue(first.contains("SEQUENCE:0"), first);
    board.act(job, "promise", act(job, "Ede").put("promised", "2027-03-19T10:00:00Z"));
    String second = board.get(path).body();
    assertTrue(second.contains("SEQUENCE:1"), second);
    assertEquals(
        first.lines().filter(l -> l.startsWith("UID")).toList(),
        second.lines().filter(l -> l.startsWith("UID")).toList());
  }

  /** RFC 5545: a calendar leaves out what has a lower sequence than what it has. */
  @Test
  void a_promise_taken_back_reaches_the_calendars() {
    JsonNode job = closed("HL-1");
    String path = "/job/" + job.get("id").asText() + "/calendar.ics";
    String first = job.get("promisableAt").asText();
    job = json(board.act(job, "promise", act(job, "Ede").put("promised", first)));
    job = json(board.act(job, "promise", act(job, "Ede").put("promised", "2027-03-19T10:00:00Z")));
    assertTrue(board.get(path).body().contains("SEQUENCE:1"));
    job = json(board.act(job, "undo", act(job, "Ede")));
    assertEquals(first, job.get("promisedAt").asText());
    assertTrue(board.get(path).body().contains("SEQUENCE:2"), board.get(path).body());
  }

  @Test
  void a_job_nobody_closed_is_not_called_closed_when_its_start_moves() {
    JsonNode job = board.entered("HL-1");
    String first = job.get("promisableAt").asText();
    job = json(board.act(job, "promise", act(job, "Ede").put("promised", first)));
    ObjectNode body = act(job, "Mira");
    body.set(
        "order", RunningBoard.order("02-good-fit-primed.json").put("start", "2027-06-23T09:30"));
    JsonNode later = json(board.act(job, "order", body));
    String why = later.get("slipWhy").asText();
    assertTrue(why.contains("The order now starts 103 d 23 h later than the promise was"), why);
    assertFalse(why.contains("closed"), why);
  }

  @Test
  void a_field_with_a_name_longer_than_any_is_left_out() {
    String path = board.form("/bench/new", "").headers().firstValue("Location").orElseThrow();
    String name = "n".repeat(50);
    HttpResponse<String> saved =
        board.form(path + "/save", "version=1&reference=HL-9&" + name + "=hi");
    assertEquals(200, saved.statusCode(), saved.body());
    assertTrue(board.get(path).body().contains("value=\"HL-9\""));
  }

  @Test
  void a_name_with_characters_that_nobody_sees_is_refused() {
    for (String hidden : List.of("\u0000", "\n", "\u202e", "\u200f", "\u2066", "\u2028")) {
      for (String field : List.of("reference", "title", "bore")) {
        ObjectNode body = board.newJob("HL-1").put(field, "HL" + hidden + "1");
        HttpResponse<String> refused = board.post("/api/jobs", body);
        assertEquals(422, refused.statusCode(), field + " " + (int) hidden.charAt(0));
        assertTrue(refused.body().contains("\"field\":\"" + field + "\""), refused.body());
      }
    }
    JsonNode job = json(board.post("/api/jobs", board.newJob("HL-1").put("title", "Häfele שלום")));
    ObjectNode body = act(job, "Mira").put("title", "a\u202eb");
    body.set("order", RunningBoard.order("02-good-fit-primed.json"));
    assertEquals(422, board.act(job, "order", body).statusCode());
    assertEquals(job.get("version"), job(job).get("version"));
  }

  @Test
  void the_bench_keeps_what_is_typed_and_both_versions_are_shown() {
    HttpResponse<String> begun = board.form("/bench/new", "");
    String path = begun.headers().firstValue("Location").orElseThrow();
    HttpResponse<String> saved =
        board.form(
            path + "/save", "version=1&bore-1=41.966&boreMaterial=steel-plain&reference=A%3C");
    assertEquals("2", saved.headers().firstValue("X-Version").orElse(""));
    assertTrue(saved.body().contains("Still needed"));
    assertTrue(board.get(path).body().contains("value=\"41.966\""));
    HttpResponse<String> second = board.form(path, "version=1&bore-1=41.5&act=show");
    assertEquals(409, second.statusCode());
    assertTrue(
        second.body().contains("yours &quot;41.5&quot;")
            || second.body().contains("yours \"41.5\""));
    assertTrue(second.body().contains("value=\"41.5\""));
    assertTrue(board.get(path).body().contains("value=\"41.966\""));
  }

  private String benchJob(String readings) {
    String path = board.form("/bench/new", "").headers().firstValue("Location").orElseThrow();
    String form =
        "version=1&act=book&who=Mira&reference=HL-7&title=cup&engagement=11&boreMaterial=steel-plain"
            + "&partMaterial=steel-alloy&boreInstrument=bore-gauge-dial"
            + "&partInstrument=outside-micrometer&temperature=18&sealNear=on"
            + readings;
    return board.form(path, form).headers().firstValue("Location").orElseThrow();
  }

  @Test
  void an_order_is_changed_at_the_bench_and_the_second_editor_loses_nothing() {
    String path = benchJob("&bore-1=41.966&bore-2=41.964&part-1=41.918");
    String first = edit(path);
    String second = edit(path);
    assertTrue(board.get(first).body().contains("value=\"41.964\""));
    String changed =
        "version=1&act=change&who=Mira&reference=HL-7&title=cup&engagement=12"
            + "&boreMaterial=steel-plain&partMaterial=steel-alloy&boreInstrument=bore-gauge-dial"
            + "&partInstrument=outside-micrometer&temperature=18&bore-1=41.966&part-1=41.918"
            + "&ofJob="
            + path.substring("/job/".length())
            + "&ofVersion=1";
    assertEquals(303, board.form(first, changed).statusCode());
    String other = changed.replace("engagement=12", "engagement=10");
    HttpResponse<String> told = board.form(second, other);
    assertEquals(409, told.statusCode());
    assertTrue(told.body().contains("Length they share: yours \"10\", theirs \"12\""), told.body());
    assertTrue(board.get(second).body().contains("value=\"10\""));
    String again = other.replace("version=1&", "version=3&").replace("ofVersion=1", "ofVersion=2");
    assertEquals(303, board.form(second, again).statusCode());
    String id = path.substring("/job/".length());
    assertEquals("10", json(board.get("/api/jobs/" + id)).at("/order/engagementMm").asText());
  }

  private String edit(String path) {
    HttpResponse<String> response = board.form(path + "/edit", "version=1&who=Ede");
    return response.headers().firstValue("Location").orElseThrow();
  }

  @Test
  void what_the_form_cannot_show_it_does_not_offer_to_change() {
    ObjectNode body = board.newJob("HL-1");
    ((ObjectNode) body.get("order")).put("confidence", 0.99);
    String entered = "/job/" + json(board.post("/api/jobs", body)).get("id").asText();
    assertFalse(board.get(entered).body().contains("Change the order"));
    String atTheBench = benchJob("&bore-1=41.966&part-1=41.918");
    assertTrue(board.get(atTheBench).body().contains("Change the order"));
  }

  @Test
  void inch_and_fahrenheit_are_taken_at_the_bench() {
    String path = board.form("/bench/new", "").headers().firstValue("Location").orElseThrow();
    String form =
        "version=1&lengthUnit=in&temperatureUnit=F&bore-1=1.6522&part-1=1.6503&engagement=0.43"
            + "&boreMaterial=steel-plain&partMaterial=steel-alloy&temperature=64"
            + "&boreInstrument=bore-gauge-dial&partInstrument=outside-micrometer";
    String answer = board.form(path + "/save", form).body();
    assertTrue(answer.contains("radial"), answer);
    assertTrue(answer.contains(" in, diametral "), answer);
  }

  @Test
  void screens_are_told_of_a_change_by_the_server() throws Exception {
    JsonNode job = board.entered("HL-1");
    HttpResponse<java.io.InputStream> stream =
        board.client.send(
            HttpRequest.newBuilder(board.uri("/events"))
                .header("Accept", "text/event-stream")
                .build(),
            HttpResponse.BodyHandlers.ofInputStream());
    BufferedReader in =
        new BufferedReader(new InputStreamReader(stream.body(), StandardCharsets.UTF_8));
    assertTrue(until(in, "booked"));
    board.act(job, "state", act(job, "Mira").put("to", "in-work"));
    assertTrue(until(in, "in work"));
    stream.body().close();
  }

  private static boolean until(BufferedReader in, String word) throws java.io.IOException {
    for (int i = 0; i < 200; i++) {
      if (in.readLine().contains(word)) {
        return true;
      }
    }
    return false;
  }

  @Test
  void a_lot_past_its_date_is_not_used_without_a_reason_and_a_witness() {
    ObjectNode use =
        JSON.createObjectNode()
            .put("who", "Orla")
            .put("kind", "use")
            .put("lot", "PASTE-3")
            .put("ml", 0.5)
            .put("id", "m-1");
    HttpResponse<String> refused = board.post("/api/cabinet/movements", use);
    assertEquals(422, refused.statusCode());
    use.put("reason", "nothing else here").put("witness", "pair 4 held");
    assertEquals(201, board.post("/api/cabinet/movements", use).statusCode());
    assertEquals(201, board.post("/api/cabinet/movements", use).statusCode());
    JsonNode left = json(board.post("/api/cabinet/movements", use));
    assertEquals(47.5, left.get("leftMl").asDouble(), 0);
  }

  @Test
  void beyond_this_machine_a_passcode_is_needed() throws Exception {
    InetAddress any = InetAddress.getByName("0.0.0.0");
    Optional<Path> none = Optional.empty();
    assertThrows(
        annulus.quantity.InvalidValue.class,
        () ->
            new ServeOptions(
                any, 0, "jdbc:sqlite:x", none, none, none, Optional.empty(), Optional.empty()));
  }

  @Test
  void without_the_passcode_nobody_gets_in() {
    String url = "jdbc:sqlite:" + folder.resolve("second.db");
    try (RunningBoard locked = new RunningBoard(url, Optional.of("correct horse"))) {
      assertEquals(303, locked.get("/counter").statusCode());
      assertEquals(401, locked.get("/api/jobs").statusCode());
      assertEquals(401, locked.form("/enter", "passcode=wrong+horse").statusCode());
      HttpResponse<String> in = locked.form("/enter", "passcode=correct+horse");
      String cookie = in.headers().firstValue("Set-Cookie").orElseThrow();
      assertTrue(cookie.contains("HttpOnly") && cookie.contains("SameSite=Strict"), cookie);
      HttpRequest.Builder with =
          HttpRequest.newBuilder(locked.uri("/counter"))
              .header("Cookie", cookie.substring(0, cookie.indexOf(';')));
      assertEquals(200, locked.send(with).statusCode());
      HttpRequest.Builder bearer =
          HttpRequest.newBuilder(locked.uri("/api/jobs"))
              .header("Authorization", "Bearer correct horse");
      assertEquals(200, locked.send(bearer).statusCode());
    }
  }
}
