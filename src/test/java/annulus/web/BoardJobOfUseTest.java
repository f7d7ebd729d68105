package annulus.web;

import static annulus.web.RunningBoard.JSON;
import static annulus.web.RunningBoard.act;
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

/** A use is booked for a job that there is: a recall finds the lot by the reference alone. */
class BoardJobOfUseTest extends OneBoard {
  private HttpResponse<String> use(String job, String more) {
    return board.form(
        "/cabinet/move", "who=Orla&kind=USE&lot=007&ml=0.1&id=u-" + job + "&job=" + job + more);
  }

  private JsonNode uses(String job) {
    return json(board.get("/api/cabinet/uses?job=" + job)).get("uses");
  }

  @Test
  void the_form_offers_what_the_jobs_on_the_board_are_called() {
    board.entered("REC-20");
    String page = board.get("/cabinet").body();
    assertTrue(page.contains("list=\"jobs\""), page);
    assertTrue(page.contains("<option value=\"REC-20\"></option>"), page);
  }

  @Test
  void a_reference_that_no_job_has_is_asked_back_once_with_the_one_it_may_be_a_slip_of() {
    board.entered("REC-20");
    HttpResponse<String> asked = use("REC-2O", "");
    assertEquals(422, asked.statusCode());
    assertTrue(asked.body().contains("No job on this board is called REC-2O."), asked.body());
    assertTrue(asked.body().contains("Used for job REC-20<"), asked.body());
    assertEquals(0, uses("REC-2O").size());
    assertEquals(303, use("REC-2O", "&meant=REC-2O").statusCode(), "it may be right");
    assertEquals(1, uses("REC-2O").size());
    assertEquals(303, use("rec 20", "").statusCode(), "a recall finds it written so");
  }

  @Test
  void the_interface_records_it_and_warns() {
    board.entered("REC-20");
    ObjectNode use = JSON.createObjectNode().put("who", "Orla").put("kind", "use");
    use.put("lot", "007").put("ml", 0.1).put("job", "REC-2O");
    HttpResponse<String> done = board.post("/api/cabinet/movements", use);
    assertEquals(201, done.statusCode());
    String warning = json(done).get("warning").asText();
    assertTrue(warning.startsWith("No job on this board is called REC-2O. Is REC-20"), warning);
    use.put("job", "REC-20");
    assertTrue(json(board.post("/api/cabinet/movements", use)).get("warning").isNull());
  }

  @Test
  void a_job_page_books_the_lot_and_the_amount_of_its_answer_in_one_tap() {
    JsonNode job = board.entered("REC-20");
    job = json(board.act(job, "closed", act(job, "Mira")));
    String lasting = job.at("/advice/decision/class").asText("thin-lasting");
    board.form(
        "/cabinet/receive",
        "who=O&newLot=NEW-1&item=" + lasting + "&container=50&expires=2029-06-30");
    String path = "/job/" + job.get("id").asText();
    String page = board.get(path).body();
    assertTrue(page.contains("Used from lot"), page);
    String part = page.substring(page.indexOf("id=\"used\""));
    String form = part.substring(part.indexOf("<form"), part.indexOf("</form>"));
    StringBuilder sent = new StringBuilder("who=Orla");
    Matcher fields =
        Pattern.compile("<input[^>]* name=\"([^\"]*)\"[^>]* value=\"([^\"]*)\"").matcher(form);
    while (fields.find()) {
      sent.append("&" + fields.group(1) + "=" + fields.group(2));
    }
    Matcher lot = Pattern.compile("<option value=\"([^\"]*)\" selected").matcher(form);
    assertTrue(lot.find(), form);
    sent.append("&lot=" + lot.group(1));
    HttpResponse<String> done = board.form("/cabinet/move", sent.toString());
    assertEquals(303, done.statusCode(), done.body());
    assertEquals(path + "#used", done.headers().firstValue("Location").orElseThrow());
    JsonNode uses = uses("REC-20");
    assertEquals(lot.group(1), uses.at("/0/lot").asText());
    assertTrue(uses.at("/0/ml").asDouble() > 0);
    String other = board.get("/cabinet?job=REC-20").body();
    assertTrue(other.contains("name=\"job\" value=\"REC-20\""), other);
    String again = board.get(path).body();
    assertTrue(again.contains("More was used"), again);
    assertFalse(again.contains("id=\"used-lot\""), "booked already");
    String lotPage = board.get("/cabinet/lot?lot=" + lot.group(1)).body();
    assertTrue(lotPage.contains("<a href=\"/jobs?reference=REC-20\">job REC-20</a>"), lotPage);
  }

  @Test
  void a_lot_page_says_of_a_job_that_is_not_on_the_board_that_it_is_not() {
    use("GONE-1", "&meant=GONE-1");
    String page = board.get("/cabinet/lot?lot=007").body();
    assertTrue(page.contains("job GONE-1, not on this board"), page);
    assertFalse(page.contains("reference=GONE-1"), page);
  }
}
