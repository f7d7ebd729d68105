package annulus.web;

import static annulus.web.RunningBoard.json;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.microsoft.playwright.Frame;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Response;
import com.microsoft.playwright.options.ColorScheme;
import com.sun.net.httpserver.HttpServer;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.URLEncoder;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What somebody of bad will may send to the board: refused, or shown as the text that it is. */
class AttackTest extends OneBoard {
  private static final List<String> WRITING_PAGES =
      List.of(
          "/bench/new",
          "/cabinet/move",
          "/cabinet/receive",
          "/cabinet/ledger",
          "/who",
          "/tools/batch",
          "/tools/learn",
          "/tools/label");

  /** The very bytes, which no client library would send. */
  private String raw(String request) throws IOException {
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), board.uri("/").getPort())) {
      socket.setSoTimeout(20_000);
      socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
      socket.shutdownOutput();
      ByteArrayOutputStream answer = new ByteArrayOutputStream();
      socket.getInputStream().transferTo(answer);
      return answer.toString(StandardCharsets.UTF_8);
    }
  }

  private String raw(String line, String... headers) throws IOException {
    String host = "127.0.0.1:" + board.uri("/").getPort();
    String all = headers.length == 0 ? "" : String.join("\r\n", headers) + "\r\n";
    return raw(line + "\r\nHost: " + host + "\r\n" + all + "Connection: close\r\n\r\n");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/../../../../etc/passwd",
        "/..%2f..%2f..%2fetc/passwd",
        "/%2e%2e/%2e%2e/etc/passwd",
        "/board.css/../../../etc/passwd",
        "/board.css%00.html",
        "/job/..%2f..%2fetc%2fpasswd/card",
        "/api/jobs/../../etc/passwd",
        "/..\\..\\etc\\passwd",
        "//etc/passwd",
        "/web/board.css",
        "/data/policy.csv",
        "/board.css;/x",
        "/.git/config",
        "/job/%0d%0aSet-Cookie:x=1/card",
      })
  void no_path_leads_out_of_the_board(String path) throws IOException {
    String answer = raw("GET " + path + " HTTP/1.1");
    assertTrue(answer.matches("(?s)HTTP/1\\.1 (400|404|303|302) .*"), answer);
    assertFalse(answer.contains("root:") || answer.contains("common practice"), answer);
    assertFalse(answer.contains("\r\nSet-Cookie:x=1"), answer);
    assertFalse(answer.contains("Exception") || answer.contains("\tat "), answer);
  }

  /** Broken requests from a fixed seed; the board answers each in the words of HTTP and stands. */
  @Test
  void whatever_bytes_arrive_the_board_still_stands() throws IOException {
    Random random = new Random(20261125);
    String good = "GET /counter HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\n\r\n";
    for (int i = 0; i < 200; i++) {
      char[] harmed = good.toCharArray();
      for (int n = 1 + random.nextInt(4); n > 0; n--) {
        harmed[random.nextInt(harmed.length)] = (char) random.nextInt(256);
      }
      String answer = raw(new String(harmed));
      assertFalse(answer.contains("\tat "), answer);
      assertFalse(answer.startsWith("HTTP/1.1 500"), () -> new String(harmed) + "\n" + answer);
    }
    assertEquals(200, board.get("/counter").statusCode());
  }

  /** Read again in the words that tell of a failure, it once kept a thread busy for ever. */
  @ParameterizedTest
  @ValueSource(strings = {"50%", "%", "%z", "%zz", "%-1", "\u0000%"})
  void a_name_in_a_cookie_that_cannot_be_read_is_no_name(String who) throws IOException {
    String counter = raw("GET /counter HTTP/1.1", "Cookie: who=" + who);
    assertTrue(counter.matches("(?s)HTTP/1\\.1 (200|400) .*"), counter);
    String nowhere = raw("GET /job/none HTTP/1.1", "Cookie: who=" + who);
    assertTrue(nowhere.matches("(?s)HTTP/1\\.1 (400|404) .*"), nowhere);
  }

  @Test
  void a_name_that_cannot_be_read_keeps_nobody_busy_before_the_passcode_either() {
    String database = "jdbc:sqlite:" + folder.resolve("locked.db");
    try (RunningBoard locked = new RunningBoard(database, Optional.of("open sesame"))) {
      byte[] form = "passcode=x".getBytes(StandardCharsets.UTF_8);
      HttpRequest.Builder chunked =
          HttpRequest.newBuilder(locked.uri("/enter"))
              .timeout(Duration.ofSeconds(20))
              .header("Cookie", "who=%zz")
              .header("Content-Type", "application/x-www-form-urlencoded")
              .POST(BodyPublishers.ofInputStream(() -> new ByteArrayInputStream(form)));
      int status = locked.send(chunked).statusCode();
      assertTrue(status >= 400 && status < 500, "" + status);
    }
  }

  @Test
  void a_header_cannot_write_another_header_or_name_another_site() throws IOException {
    String back = raw("GET /nowhere HTTP/1.1", "Referer: http://evil.example/counter");
    assertFalse(back.contains("evil.example"), back);
    String script = raw("GET /nowhere HTTP/1.1", "Referer: javascript:alert(1)");
    assertFalse(script.contains("javascript:"), script);
    String quoted =
        raw(
            "GET /nowhere HTTP/1.1",
            "Referer: http://127.0.0.1:" + board.uri("/").getPort() + "/\"><script>1</script>");
    assertFalse(quoted.contains("<script>1"), quoted);
    HttpResponse<String> who = board.form("/who", "who=" + code("Mira\r\nSet-Cookie: x=1"));
    assertTrue(who.headers().allValues("Set-Cookie").stream().noneMatch(c -> c.startsWith("x=")));
    String host = raw("GET /counter HTTP/1.1\r\nHost: evil.example\r\nConnection: close\r\n\r\n");
    assertTrue(host.contains(" 403 ") || host.contains(" 400 "), host);
  }

  private static String code(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "'; DROP TABLE job; --",
        "x' OR '1'='1",
        "\"; DELETE FROM job_change; --",
        "${jndi:ldap://evil.example/a}",
        "%s%n%x",
        "\\x00\\u0000",
      })
  void what_is_typed_never_becomes_a_command_of_the_database(String words) {
    ObjectNode other = board.newJob("HL-1");
    assertEquals(201, board.post("/api/jobs", other).statusCode());
    ObjectNode body = board.newJob(words);
    body.put("title", words).put("bore", words).put("who", words);
    JsonNode job = json(board.post("/api/jobs", body));
    assertEquals(words, job.get("reference").asText());
    assertEquals(404, board.get("/api/jobs/" + code(words)).statusCode());
    assertEquals(2, json(board.get("/api/jobs")).get("jobs").size());
    ObjectNode use = RunningBoard.JSON.createObjectNode();
    use.put("who", words).put("kind", "use").put("lot", words).put("ml", 1).put("job", words);
    assertTrue(board.post("/api/cabinet/movements", use).statusCode() < 500);
    assertEquals(200, board.get("/counter").statusCode());
  }

  /** A job's words go into a calendar that other programs read. */
  @Test
  void a_title_cannot_add_lines_to_a_calendar() {
    ObjectNode body = board.newJob("HL-1\r\nATTACH:http://evil.example/x");
    body.put("title", "cup\r\nATTENDEE:mailto:evil@evil.example\nEND:VEVENT");
    HttpResponse<String> entered = board.post("/api/jobs", body);
    if (entered.statusCode() == 201) {
      JsonNode job = json(entered);
      board.act(job, "closed", RunningBoard.act(job, "Mira"));
      String text = board.get("/job/" + job.get("id").asText() + "/calendar.ics").body();
      List<String> lines = text.lines().toList();
      assertTrue(lines.stream().noneMatch(l -> l.matches("(ATTACH|ATTENDEE|X-).*")), text);
      long begins = lines.stream().filter("BEGIN:VEVENT"::equals).count();
      assertEquals(begins, lines.stream().filter("END:VEVENT"::equals).count(), text);
    }
  }

  @Test
  void a_cell_of_a_job_list_cannot_become_a_formula() {
    String header = "job,title,radial_gap_um,radial_gap_plus_minus_um,diameter_mm,engagement_mm,";
    for (String cell : List.of("=1+1", "+cmd|' /C calc'!A0", "-2+3", "@SUM(A1)", "\uFF1D1+1")) {
      String list =
          header
              + "bore_material,part_material,temperature_c\n"
              + "\""
              + cell
              + "\",t,30,2,30,20,steel-plain,steel-plain,20\n"
              + "\""
              + cell
              + "\",t,30,2,30,0,steel-plain,steel-plain,20\n";
      HttpResponse<String> answer = board.text("/api/batch", "text/csv", list);
      assertEquals(200, answer.statusCode(), answer.body());
      List<String> rows = answer.body().lines().skip(1).toList();
      assertEquals(2, rows.size(), answer.body());
      for (String row : rows) {
        assertTrue(row.contains("'" + cell), row);
        assertFalse(row.matches(".*(^|,)\"?[=+@\uFF1D].*"), row);
      }
    }
  }

  /** Every operation that writes, as a page of another site would send it. */
  @Test
  void no_operation_takes_a_request_of_another_site() throws IOException {
    JsonNode job = board.entered("HL-1");
    List<String> paths = new ArrayList<>(WRITING_PAGES);
    JsonNode described = json(board.get("/openapi.json")).get("paths");
    for (Map.Entry<String, JsonNode> path : described.properties()) {
      if (path.getValue().has("post")) {
        paths.add(path.getKey().replace("{id}", job.get("id").asText()));
      }
    }
    assertTrue(paths.size() > 20, paths.toString());
    for (String path : paths) {
      for (String header : List.of("Origin", "Sec-Fetch-Site")) {
        HttpRequest.Builder request =
            HttpRequest.newBuilder(board.uri(path))
                .header(header, header.equals("Origin") ? "http://evil.example" : "cross-site")
                .header("Content-Type", "text/plain")
                .POST(HttpRequest.BodyPublishers.ofString(board.newJob("HL-2").toString()));
        assertEquals(403, board.send(request).statusCode(), path + " " + header);
      }
    }
    assertEquals(1, json(board.get("/api/jobs")).get("jobs").size());
  }

  /** The same from a real browser that shows a page of another site. */
  @Test
  void a_browser_on_another_site_cannot_write_read_or_frame_the_board() throws IOException {
    HttpServer evil =
        HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    String to = board.uri("/").toString();
    String page =
        "<!DOCTYPE html><title>evil</title><form id=f method=post action='"
            + to
            + "bench/new'></form><iframe id=i src='"
            + to
            + "counter'></iframe>";
    evil.createContext(
        "/",
        exchange -> {
          byte[] bytes = page.getBytes(StandardCharsets.UTF_8);
          exchange.getResponseHeaders().add("Content-Type", "text/html");
          exchange.sendResponseHeaders(200, bytes.length);
          exchange.getResponseBody().write(bytes);
          exchange.close();
        });
    evil.start();
    try (Browser browser = Browser.start("attack")) {
      Page screen = browser.screen(board, ColorScheme.LIGHT);
      String from = "http://localhost:" + evil.getAddress().getPort() + "/";
      screen.navigate(from);
      String read =
          "async () => { try { const r = await fetch('TO'); return await r.text(); }"
              + " catch (e) { return 'refused'; } }";
      assertEquals("refused", screen.evaluate(read.replace("TO", to + "api/jobs")));
      String write =
          "async () => { await fetch('TO', {method: 'POST', mode: 'no-cors', body: 'BODY'})"
              + ".catch(() => 0); return 'sent'; }";
      screen.evaluate(
          write.replace("TO", to + "api/jobs").replace("BODY", board.newJob("HL-2").toString()));
      assertEquals(0, json(board.get("/api/jobs")).get("jobs").size());
      screen.navigate(from);
      Response answer =
          screen.waitForResponse(
              r -> r.url().endsWith("/bench/new"),
              () -> screen.evaluate("document.getElementById('f').submit()"));
      assertEquals(403, answer.status());
      screen.waitForURL(url -> url.endsWith("/bench/new"));
      assertFalse(board.get("/bench").body().contains("Begun"));
      screen.navigate(from);
      for (Frame frame : screen.frames()) {
        String shown = frame == screen.mainFrame() ? "" : frame.content();
        assertFalse(shown.contains("board.css"), shown);
      }
    } finally {
      evil.stop(0);
    }
  }
}
