package annulus.web;

import static annulus.web.RunningBoard.act;
import static annulus.web.RunningBoard.json;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.junit.jupiter.api.Test;

/** A joint that goes before full cure says so on every page and paper of the board. */
class BoardLimitedUseTest extends OneBoard {
  private JsonNode promised(String consequence) {
    ObjectNode order = (ObjectNode) RunningBoard.tree("demo-data/orders/01-good-fit.json");
    order.put("consequence", consequence).remove("start");
    ObjectNode entered = board.newJob("HL-1");
    entered.set("order", order);
    JsonNode job = json(board.post("/api/jobs", entered));
    job = json(board.act(job, "closed", act(job, "Mira")));
    ObjectNode promise = act(job, "Mira").put("promised", job.get("promisableAt").asText());
    return json(board.act(job, "promise", promise));
  }

  @Test
  void counter_job_page_tag_card_and_calendar_say_for_how_long_the_use_is_limited() {
    String id = promised("nuisance").get("id").asText();
    String words = ": no full load, no shocks, no heat, no solvents.";
    for (String page :
        new String[] {"/counter", "/job/" + id, "/job/" + id + "/tag", "/job/" + id + "/card"}) {
      String body = board.get(page).body().replace("\u00a0", " ");
      assertTrue(body.contains("Limited use until ") && body.contains(words), page + body);
    }
    String page = board.get("/job/" + id).body();
    assertTrue(page.contains("Ready on ") && page.split("Limited use until", -1).length >= 3, page);
    String ics = board.get("/job/" + id + "/calendar.ics").body().replace("\r\n ", "");
    String ready = ics.substring(ics.lastIndexOf("BEGIN:VEVENT"));
    assertTrue(ready.contains("SUMMARY:Ready"), ics);
    assertTrue(ready.contains("DESCRIPTION:Limited use until "), ics);
  }

  @Test
  void a_joint_that_is_fully_cured_when_it_goes_says_nothing_of_a_limit() {
    String id = promised("injury").get("id").asText();
    for (String page :
        new String[] {"/counter", "/job/" + id, "/job/" + id + "/tag", "/job/" + id + "/card"}) {
      assertFalse(board.get(page).body().contains("Limited use"), page);
    }
    assertEquals(200, board.get("/job/" + id).statusCode());
  }
}
