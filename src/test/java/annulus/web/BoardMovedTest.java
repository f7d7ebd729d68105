package annulus.web;

import static annulus.web.RunningBoard.act;
import static annulus.web.RunningBoard.json;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A joint that was torn does not become good again by what is written about it. */
class BoardMovedTest {
  @TempDir Path folder;

  private RunningBoard board() {
    return RunningBoard.on("jdbc:sqlite:" + folder.resolve("board.db"));
  }

  private static JsonNode closed(RunningBoard board) {
    JsonNode job = board.entered("HL-1");
    return json(board.act(job, "closed", act(job, "Mira")));
  }

  private static HttpResponse<String> reordered(RunningBoard board, JsonNode job, double celsius) {
    ObjectNode order = RunningBoard.order("02-good-fit-primed.json").put("temperatureC", celsius);
    ObjectNode body = act(job, "Mira");
    body.set("order", order);
    return board.act(job, "order", body);
  }

  @Test
  void a_joint_that_was_moved_stays_moved_whatever_is_changed_in_its_order() {
    try (RunningBoard board = board()) {
      JsonNode job = closed(board);
      board.clock.forward(Duration.ofMinutes(5));
      job = json(board.act(job, "moved", act(job, "Ines")));
      JsonNode changed = json(reordered(board, job, 21));
      assertEquals(job.at("/order/movedAt"), changed.at("/order/movedAt"));
      assertTrue(changed.get("decision").asText().contains("STRIP AND REDO"), changed.toString());
      assertTrue(changed.get("readyAt").isNull() && changed.get("promisableAt").isNull());
      JsonNode anew = json(board.act(changed, "state", act(changed, "Mira").put("to", "in-work")));
      anew = json(board.act(anew, "closed", act(anew, "Mira")));
      assertTrue(anew.get("yes").asBoolean() && !anew.get("order").has("movedAt"));
    }
  }

  @Test
  void a_second_report_of_an_earlier_move_does_not_make_the_joint_good() {
    try (RunningBoard board = board()) {
      JsonNode job = closed(board);
      board.clock.forward(Duration.ofMinutes(5));
      job = json(board.act(job, "moved", act(job, "Ines")));
      ObjectNode earlier = act(job, "Mira").put("at", job.get("closedAt").asText());
      JsonNode again = json(board.act(job, "moved", earlier));
      assertTrue(again.get("decision").asText().contains("STRIP AND REDO"), again.toString());
    }
  }

  private static JsonNode put(RunningBoard board, JsonNode job, String to) {
    return json(board.act(job, "state", act(job, "Ede").put("to", to)));
  }

  private static String page(RunningBoard board, JsonNode job) {
    return board.get("/job/" + job.get("id").asText()).body();
  }

  /** Twisted on Saturday, and learnt of on Tuesday when the joint counts as cured. */
  @Test
  void in_every_closed_state_it_can_be_said_that_the_part_was_moved_and_when() {
    try (RunningBoard board = board()) {
      JsonNode open = board.entered("HL-1");
      assertFalse(page(board, open).contains("Moved at"), "nothing is closed yet");
      JsonNode job = json(board.act(open, "closed", act(open, "Mira")));
      assertTrue(page(board, job).contains("<label for=\"movedAt\">Moved at</label>"));
      board.clock.set(Instant.parse(job.get("readyAt").asText()));
      for (String to : List.of("checked", "customer-told", "collected")) {
        String page = page(board, job);
        assertTrue(page.contains("Moved at this time"), page);
        assertTrue(page.contains("It was moved just now"), page);
        job = put(board, job, to);
      }
      assertTrue(page(board, job).contains("Moved at this time"), "the customer has it");
      assertFalse(page(board, job).contains("It was moved just now"), "not seen from here");
      String form = "who=Ines&at=2027-03-11T09:45&version=" + job.get("version").asLong();
      String path = "/job/" + job.get("id").asText();
      assertEquals(303, board.form(path + "/moved", form).statusCode());
      String moved = page(board, job);
      assertTrue(moved.contains("part was moved at Thu 11 Mar 09:45"), moved);
      assertFalse(moved.contains("Moved at this time"), "it is lost already");
    }
  }

  private static String edit(RunningBoard board, JsonNode job) {
    String path = "/job/" + job.get("id").asText() + "/edit";
    HttpResponse<String> response = board.form(path, "version=1&who=Ana");
    return response.headers().firstValue("Location").orElseThrow();
  }

  @Test
  void the_second_editor_reads_what_the_first_added_and_that_the_part_was_moved() {
    try (RunningBoard board = board()) {
      String bench = board.form("/bench/new", "").headers().firstValue("Location").orElseThrow();
      String form =
          "version=1&act=book&who=Mira&reference=HL-7&engagement=11&boreMaterial=steel-plain"
              + "&partMaterial=steel-alloy&boreInstrument=bore-gauge-dial&bore-1=41.966"
              + "&partInstrument=outside-micrometer&temperature=18&part-1=41.918";
      String path = board.form(bench, form).headers().firstValue("Location").orElseThrow();
      String id = path.substring("/job/".length());
      JsonNode job = json(board.get("/api/jobs/" + id));
      String mine = edit(board, job);
      String fields = form.replace("act=book", "act=change") + "&ofJob=" + id + "&ofVersion=1";
      String theirs = edit(board, job);
      String added = fields + "&sealNear=on&torqueNm=3";
      assertEquals(303, board.form(theirs, added).statusCode());
      job = json(board.get("/api/jobs/" + id));
      job = json(board.act(job, "closed", act(job, "Ines")));
      board.clock.forward(Duration.ofHours(1));
      board.act(job, "moved", act(job, "Ines"));
      HttpResponse<String> told = board.form(mine, fields);
      assertEquals(409, told.statusCode());
      String seal = "A seal or open bearing is near: yours \"\", theirs \"on\"";
      assertTrue(told.body().contains(seal), told.body());
      assertTrue(told.body().contains("Twist in the bore: yours \"\", theirs \"3\""), told.body());
      assertTrue(told.body().contains("The part was moved after closing"), told.body());
      String again = fields.replace("version=1&", "version=3&").replace("Version=1", "Version=4");
      assertEquals(303, board.form(mine, again).statusCode());
      JsonNode changed = json(board.get("/api/jobs/" + id));
      assertTrue(changed.get("decision").asText().contains("STRIP AND REDO"), changed.toString());
    }
  }
}
