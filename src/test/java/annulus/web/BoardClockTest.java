package annulus.web;

import static annulus.web.RunningBoard.json;
import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What a page that stays open records as now, and what it offers once time has gone on. */
class BoardClockTest extends OneBoard {
  private static Locator button(Page page, String name) {
    return page.getByRole(
        AriaRole.BUTTON, new Page.GetByRoleOptions().setName(name).setExact(true));
  }

  private static void iAm(Page page) {
    page.navigate("/who");
    page.getByLabel("Your name or initials").fill("Mira");
    button(page, "That's me").click();
  }

  private JsonNode now(JsonNode job) {
    return json(board.get("/api/jobs/" + job.get("id").asText()));
  }

  @Test
  void closed_now_means_now_whatever_was_typed_in_the_folded_field() {
    JsonNode job = board.entered("HL-1");
    board.clock.forward(Duration.ofHours(6));
    try (Browser browser = Browser.start("clock")) {
      Page page = browser.screen(board, ColorScheme.LIGHT);
      iAm(page);
      page.navigate("/job/" + job.get("id").asText());
      page.getByText("It was closed earlier").click();
      page.getByLabel("Closed at").fill("2027-03-11T09:45");
      page.getByText("It was closed earlier").click();
      button(page, "Joint closed now").click();
      assertThat(page.locator("#live")).containsText("curing until");
      assertEquals("2027-03-11T14:30:00Z", now(job).get("closedAt").asText());
      assertEquals(List.of(), browser.errors);
    }
  }

  @Test
  void no_button_for_now_sends_a_time_along() {
    JsonNode job = board.entered("HL-1");
    String path = "/job/" + job.get("id").asText();
    assertFalse(form(board.get(path).body(), "Joint closed now").contains("name=\"at\""));
    board.form(path + "/closed", "who=Mira&version=1");
    assertFalse(form(board.get(path).body(), "It was moved just now").contains("name=\"at\""));
  }

  private static String form(String page, String button) {
    int at = page.indexOf(button);
    assertTrue(at > 0, page);
    return page.substring(page.lastIndexOf("<form", at), page.indexOf("</form>", at));
  }

  @Test
  void an_earlier_time_that_is_not_typed_is_asked_for_and_not_taken_as_now() {
    JsonNode job = board.entered("HL-1");
    String path = "/job/" + job.get("id").asText();
    HttpResponse<String> closed = board.form(path + "/closed", "who=Mira&version=1&at=");
    assertEquals(422, closed.statusCode());
    assertTrue(closed.body().contains("Closed at"), closed.body());
    board.form(path + "/closed", "who=Mira&version=1");
    assertEquals(422, board.form(path + "/moved", "who=Mira&version=2&at=").statusCode());
    assertEquals("curing", now(job).get("state").asText());
  }

  @Test
  void a_page_left_open_says_when_the_cure_has_ended_and_then_offers_the_check_first() {
    JsonNode job = board.entered("HL-1");
    String path = "/job/" + job.get("id").asText();
    board.form(path + "/closed", "who=Mira&version=1");
    try (Browser browser = Browser.start("clock")) {
      Page page = browser.screen(board, ColorScheme.LIGHT);
      iAm(page);
      page.navigate(path);
      assertThat(page.locator("#live")).containsText("curing until");
      board.clock.set(Instant.parse(now(job).get("readyAt").asText()));
      assertThat(page.locator("#live")).containsText("cured, to check");
      assertThat(page.locator("#changed")).containsText("Time has gone on");
      browser.look(page, "cured-meanwhile");
      page.getByText("Show it anew").click();
      assertThat(button(page, "Checked and good")).isVisible();
      assertThat(page.locator("#changed")).hasCount(0);
      browser.look(page, "cured");
      String buttons = page.locator("section[aria-label=Now]").innerText();
      int check = buttons.indexOf("Checked and good");
      assertTrue(check >= 0 && check < buttons.indexOf("It was moved just now"), buttons);
      assertEquals(List.of(), browser.errors);
    }
  }
}
