package annulus.web;

import static annulus.web.RunningBoard.act;
import static annulus.web.RunningBoard.json;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A customer who was told a time comes to a closed door when the shop closes that day since. */
class BoardClosureTest {
  private static final String FRIDAY = "2027-04-09T11:00";

  @TempDir Path folder;
  private String url;
  private JsonNode job;

  @BeforeEach
  void promisedForFriday() {
    url = "jdbc:sqlite:" + folder.resolve("board.db");
    try (RunningBoard board = RunningBoard.on(url)) {
      job = board.entered("HL-1");
      job = json(board.act(job, "closed", act(job, "Mira")));
      job = json(board.act(job, "promise", act(job, "Ede").put("promised", FRIDAY)));
      assertFalse(job.get("slips").asBoolean(), job.toString());
    }
  }

  private RunningBoard withAFuneral() throws IOException {
    ObjectNode shop = (ObjectNode) RunningBoard.tree("demo-data/shop.json");
    shop.withArray("closures").addObject().put("from", "2027-04-09").put("reason", "Funeral");
    return RunningBoard.withShop(
        url, Files.writeString(folder.resolve("shop.json"), shop.toString()));
  }

  private JsonNode now(RunningBoard board) {
    return json(board.get("/api/jobs/" + job.get("id").asText()));
  }

  private String page(RunningBoard board, String what) {
    return board.get("/job/" + job.get("id").asText() + what).body();
  }

  @Test
  void the_promise_slips_and_says_why_the_shop_is_closed() throws IOException {
    try (RunningBoard board = withAFuneral()) {
      JsonNode shut = now(board);
      assertTrue(shut.get("slips").asBoolean(), shut.toString());
      String why = shut.get("slipWhy").asText();
      assertTrue(why.endsWith(" The shop is closed at Fri 9 Apr 11:00 (Funeral)."), why);
      String page = page(board, "");
      assertTrue(page.contains("promised Fri 9 Apr 11:00 can't be kept, but"), page);
      assertFalse(page.contains("Ready on Friday 9 April"), page);
      assertFalse(page(board, "/tag").contains("9 April"), "no tag with the closed day");
      assertEquals(
          422, board.get("/job/" + shut.get("id").asText() + "/calendar.ics").statusCode());
      ObjectNode anew = act(shut, "Ede").put("promised", shut.get("promisableAt").asText());
      JsonNode kept = json(board.act(shut, "promise", anew));
      assertFalse(kept.get("slips").asBoolean(), kept.toString());
    }
  }

  @Test
  void a_job_that_is_checked_slips_too_until_the_day_has_passed_or_it_is_collected()
      throws IOException {
    try (RunningBoard board = withAFuneral()) {
      board.clock.set(Instant.parse(job.get("readyAt").asText()));
      JsonNode checked = json(board.act(job, "state", act(job, "Ede").put("to", "checked")));
      assertTrue(checked.get("slips").asBoolean(), checked.toString());
      assertTrue(board.get("/counter").body().contains("Slipping or not safe: call the customer"));
      board.clock.set(Instant.parse("2027-04-09T09:00:01Z"));
      assertFalse(now(board).get("slips").asBoolean(), "the time is over");
      board.clock.set(Instant.parse("2027-04-08T09:00:00Z"));
      JsonNode gone = json(board.act(checked, "state", act(checked, "E").put("to", "collected")));
      assertFalse(gone.get("slips").asBoolean(), gone.toString());
    }
  }
}
