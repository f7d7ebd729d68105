package annulus.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A joint from the first reading to its closing with the keyboard alone. */
class BoardKeyboardTest {
  private static final int MOST_STEPS = 150;

  @TempDir Path folder;

  @Test
  void the_bench_is_worked_with_the_keyboard_alone() {
    try (RunningBoard board = RunningBoard.on("jdbc:sqlite:" + folder.resolve("board.db"));
        Browser browser = Browser.start("keyboard")) {
      Page page = browser.screen(board, ColorScheme.LIGHT);
      page.navigate("/who");
      type(page, "#who", "Mira");
      page.keyboard().press("Enter");
      assertThat(page.locator(".who")).hasText("You: Mira");
      page.navigate("/bench");
      press(page, "button.main");
      assertThat(page.locator("h1")).hasText("Bench: one joint");
      type(page, "#reference", "K-1");
      choose(page, "#placed", "on");
      assertThat(page.locator("#bore-1-depth")).isVisible();
      readings(page);
      assertThat(page.locator("#preview")).containsText("USE");
      browser.look(page, "bench-places");
      press(page, "button[value=start]");
      assertThat(page.locator("h1")).containsText("Job K-1");
      press(page, "form[action$='/closed'] button.main");
      assertThat(page.locator("#live")).containsText("curing until");
      assertEquals(List.of(), browser.errors);
    }
  }

  private static void readings(Page page) {
    type(page, "#bore-1", "41.966");
    type(page, "#bore-1-depth", "3");
    type(page, "#bore-1-angle", "0");
    type(page, "#bore-2", "41.963");
    type(page, "#bore-3", "41.964");
    // a fourth field grew when the third was filled
    type(page, "#bore-4", "41.965");
    choose(page, "#boreInstrument", "bore-gauge-dial");
    choose(page, "#boreMaterial", "steel-plain");
    type(page, "#part-1", "41.918");
    type(page, "#part-2", "41.919");
    choose(page, "#partInstrument", "outside-micrometer");
    choose(page, "#partMaterial", "steel-alloy");
    type(page, "#engagement", "11");
    choose(page, "#place", "bench");
  }

  /** Steps on until the focus is there; it must be seen. */
  private static void reach(Page page, String selector) {
    for (int i = 0; i < MOST_STEPS; i++) {
      page.keyboard().press("Tab");
      if (Boolean.TRUE.equals(page.evaluate("s => document.activeElement.matches(s)", selector))) {
        Object ring = page.evaluate("() => getComputedStyle(document.activeElement).outlineWidth");
        assertTrue(!"0px".equals(ring), selector + " shows no focus");
        return;
      }
    }
    fail(selector + " can't be reached with the tab key");
  }

  private static void type(Page page, String selector, String text) {
    reach(page, selector);
    page.keyboard().type(text);
    assertThat(page.locator(selector)).hasValue(text);
  }

  private static void press(Page page, String selector) {
    reach(page, selector);
    page.keyboard().press("Enter");
  }

  private static void choose(Page page, String selector, String value) {
    reach(page, selector);
    for (int i = 0; i < MOST_STEPS && !value.equals(chosen(page, selector)); i++) {
      page.keyboard().press("ArrowDown");
    }
  }

  /** Empty while the page is being made anew. */
  private static Object chosen(Page page, String selector) {
    return page.locator(selector).inputValue();
  }
}
