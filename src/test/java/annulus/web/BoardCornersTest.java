package annulus.web;

import static annulus.web.RunningBoard.act;
import static annulus.web.RunningBoard.json;
import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Pages that a good day does not show, in a real browser. */
class BoardCornersTest {
  @TempDir Path folder;

  private static Locator button(Page page, String name) {
    return page.getByRole(
        AriaRole.BUTTON, new Page.GetByRoleOptions().setName(name).setExact(true));
  }

  private static void iAm(Page page, String who) {
    page.navigate("/who");
    page.getByLabel("Your name or initials").fill(who);
    button(page, "That's me").click();
  }

  @Test
  void a_customer_is_called_a_job_is_found_and_an_order_is_changed() {
    try (RunningBoard board = RunningBoard.on("jdbc:sqlite:" + folder.resolve("board.db"));
        Browser browser = Browser.start("corners")) {
      Page page = browser.screen(board, ColorScheme.LIGHT);
      iAm(page, "Ede");
      JsonNode job = board.entered("HL-1");
      String path = "/job/" + job.get("id").asText();
      job = json(board.act(job, "closed", act(job, "Mira")));
      board.clock.set(Instant.parse(job.get("readyAt").asText()));
      changed(browser, page, path);
      for (String to : List.of("Checked and good", "Customer told", "Collected")) {
        button(page, to).click();
      }
      assertThat(page.locator("#live")).containsText("collected");
      moved(browser, page);
      page.navigate("/counter");
      browser.look(page, "call-counter");
      button(page, "Customer called").click();
      assertThat(page.locator(".card")).containsText("customer called");
      board.clock.forward(Duration.ofDays(1));
      page.navigate("/counter");
      page.getByLabel("Job reference or title, or a part of it").fill("hl");
      button(page, "Find the job").click();
      assertThat(page.locator(".rows")).containsText("HL-1 a cup, collected, customer called");
      browser.look(page, "find");
      assertEquals(List.of(), browser.errors);
    }
  }

  private static void changed(Browser browser, Page page, String path) {
    page.navigate(path);
    button(page, "Change the order").click();
    page.getByText("More: what is near").click();
    browser.look(page, "change-closed");
    page.locator("#temperature").fill("19,5");
    assertThat(page.locator("#preview")).containsText("Comma read as point");
    browser.look(page, "comma");
    button(page, "Change the job").click();
    assertThat(page.locator(".history"))
        .containsText("order changed: Temperature where it cures 18 → 19.5");
    browser.look(page, "job-cured");
  }

  private static void moved(Browser browser, Page page) {
    page.getByText("It was moved earlier").click();
    page.getByLabel("Moved at").fill("2027-03-11T11:00");
    browser.look(page, "job-moved");
    button(page, "Moved at this time").click();
    assertThat(page.locator("#live")).containsText("call the customer");
    browser.look(page, "call-job");
  }

  @Test
  void a_second_job_of_one_reference_and_the_hour_shown_twice_are_asked_about() {
    try (RunningBoard board = RunningBoard.on("jdbc:sqlite:" + folder.resolve("board.db"));
        Browser browser = Browser.start("corners")) {
      Page page = browser.screen(board, ColorScheme.DARK);
      iAm(page, "Mira");
      board.clock.set(Instant.parse("2027-10-30T22:00:00Z"));
      JsonNode job = board.entered("HL-2");
      page.navigate("/bench");
      button(page, "Measure a new joint").click();
      page.getByLabel("Job reference").fill("HL-2");
      assertThat(page.locator("#preview")).containsText("On the board already: HL-2 a cup");
      page.getByText("More: what is near").click();
      page.locator("#start").fill("2027-10-31T02:30");
      button(page, "Book it for later").click();
      assertThat(page.getByLabel("It is another joint with the same reference")).isVisible();
      assertThat(page.locator("#preview")).containsText("The clock shows that hour twice");
      assertThat(page.getByLabel("Closed at: which of the two?")).isVisible();
      browser.look(page, "asked-dark");
      board.clock.set(Instant.parse("2027-10-31T07:00:00Z"));
      page.navigate("/job/" + job.get("id").asText());
      page.getByText("It was closed earlier").click();
      page.getByLabel("Closed at").fill("2027-10-31T02:30");
      button(page, "Closed at this time").click();
      assertThat(page.locator("h1")).hasText("Which 02:30?");
      browser.look(page, "which-hour-dark");
      button(page, "The second 02:30, 1 h later").click();
      assertThat(page.locator("#live")).containsText("Joint closed Sun 31 Oct 02:30 (+01:00)");
      assertEquals(List.of(), browser.errors);
    }
  }

  @Test
  void a_tag_with_a_long_title_stays_on_its_paper() {
    try (RunningBoard board = RunningBoard.on("jdbc:sqlite:" + folder.resolve("board.db"));
        Browser browser = Browser.start("corners")) {
      Page page = browser.screen(board, ColorScheme.LIGHT);
      JsonNode job =
          json(
              board.post(
                  "/api/jobs",
                  board.newJob("W".repeat(30)).put("title", "Bearing cup ".repeat(8) + "left")));
      job = json(board.act(job, "closed", act(job, "Mira")));
      String first = job.get("promisableAt").asText();
      board.act(job, "promise", act(job, "Ede").put("promised", first));
      page.navigate("/job/" + job.get("id").asText() + "/tag");
      Object over = page.evaluate("document.body.scrollHeight - document.body.clientHeight");
      assertEquals(0, ((Number) over).intValue(), "the tag overflows");
      page.setViewportSize(420, 580);
      page.screenshot(
          new Page.ScreenshotOptions().setPath(Path.of("target", "screens", "corners", "tag.png")));
    }
  }
}
