package annulus.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** A headless Chromium of the machine. */
final class Browser implements AutoCloseable {
  private static final String INSTALL = "apt-get update && apt-get install -y chromium";
  private static final int[] WIDTHS = {360, 1024, 1920};

  private final Locale before = Locale.getDefault();
  private final Playwright playwright;
  private final com.microsoft.playwright.Browser browser;
  private final String pictures;
  final List<String> errors = new ArrayList<>();

  private Browser(Path program, String pictures) {
    // the driver's library writes its own words in the locale of the machine: no Turkish here
    Locale.setDefault(Locale.ROOT);
    this.pictures = pictures;
    playwright =
        Playwright.create(
            new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
    browser =
        playwright
            .chromium()
            .launch(
                new BrowserType.LaunchOptions()
                    .setExecutablePath(program)
                    .setArgs(
                        List.of(
                            "--no-sandbox",
                            "--disable-gpu",
                            "--disable-quic",
                            "--no-first-run",
                            "--disable-background-networking",
                            "--disable-component-update",
                            "--disable-sync")));
  }

  /** Starts it; the test is skipped where there is none. */
  static Browser start(String pictures) {
    Path program = Path.of("/usr/bin/chromium");
    assumeTrue(Files.isExecutable(program), "Chromium is missing: " + INSTALL);
    return new Browser(program, pictures);
  }

  /** A screen of its own, with its own cookies. */
  Page screen(RunningBoard board, ColorScheme scheme) {
    BrowserContext context =
        browser.newContext(
            new com.microsoft.playwright.Browser.NewContextOptions()
                .setBaseURL(board.uri("/").toString())
                .setViewportSize(1024, 800)
                .setColorScheme(scheme));
    return watched(context.newPage());
  }

  /** A page that is written by the test itself. */
  Page paper() {
    return watched(browser.newPage());
  }

  private Page watched(Page page) {
    page.setDefaultTimeout(20_000);
    page.onConsoleMessage(
        m -> {
          if (m.type().equals("error") && !m.text().contains("status of 4")) {
            errors.add(page.url() + ": " + m.text());
          }
        });
    page.onPageError(e -> errors.add(page.url() + ": " + e));
    return page;
  }

  /** Holds a page against the accessibility rules and takes its picture at three widths. */
  void look(Page page, String name) {
    page.waitForLoadState(); // the words can be there before the style is
    List<String> found =
        new AxeBuilder(page)
                .withTags(List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"))
                .analyze()
                .getViolations()
                .stream()
                .flatMap(
                    v ->
                        v.getNodes().stream().map(n -> name + " " + v.getId() + ": " + n.getHtml()))
                .toList();
    assertEquals(List.of(), found);
    for (int width : WIDTHS) {
      page.setViewportSize(width, 900);
      Object wide = page.evaluate("document.documentElement.scrollWidth");
      assertEquals(width, ((Number) wide).intValue(), name + " scrolls sideways at " + width);
      Object small = page.evaluate(SMALL_TARGETS);
      assertEquals("", small, name + " has small targets at " + width);
      page.screenshot(
          new Page.ScreenshotOptions()
              .setPath(Path.of("target", "screens", pictures, name + "-" + width + ".png"))
              .setFullPage(true));
    }
    page.setViewportSize(1024, 800);
  }

  /** Buttons, fields and links in rows of their own, smaller than 44 px; in-line links excepted. */
  private static final String SMALL_TARGETS =
      "(() => [...document.querySelectorAll('button,.button,input:not([type=hidden])"
          + ":not([type=checkbox]),select,summary,nav a')].filter(e => { const r ="
          + " e.getBoundingClientRect(); return r.width > 0 && r.right > 0 && (r.height < 44 ||"
          + " r.width < 44); }).map(e => e.outerHTML).join('\\n'))()";

  @Override
  public void close() {
    browser.close();
    playwright.close();
    Locale.setDefault(before);
  }
}
