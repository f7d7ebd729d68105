package annulus.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Nothing typed at the bench is lost when the board can't be reached. */
class BenchOfflineTest {
  @TempDir Path folder;

  private static void press(Page page, String name) {
    page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName(name).setExact(true))
        .click();
  }

  @Test
  void a_button_waits_for_the_board_and_what_was_typed_last_is_kept() {
    try (RunningBoard board = RunningBoard.on("jdbc:sqlite:" + folder.resolve("board.db"));
        Browser browser = Browser.start("offline")) {
      Page page = browser.screen(board, ColorScheme.LIGHT);
      page.navigate("/bench");
      press(page, "Measure a new joint");
      page.getByLabel("Length they share").fill("11");
      assertThat(page.locator("#preview")).not().containsText("Length they share");
      page.context().setOffline(true);
      page.getByLabel("Length they share").fill("12");
      press(page, "Show the answer");
      assertThat(page.locator("#preview")).containsText("Not sent");
      assertThat(page.locator("#offline")).isVisible();
      assertThat(page.getByLabel("Length they share")).hasValue("12");
      page.context().setOffline(false);
      assertThat(page.locator("#preview")).not().containsText("Not sent");
      assertThat(page.getByLabel("Length they share")).hasValue("12");
      page.getByLabel("Length they share").fill("13");
      page.reload();
      page.waitForTimeout(500);
      page.reload();
      assertThat(page.getByLabel("Length they share")).hasValue("13");
    }
  }
}
