package annulus.bench;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** When a headless browser with nothing kept first paints a page. */
final class FirstPaint {
  private static final Path CHROMIUM = Path.of("/usr/bin/chromium");
  private static final int LOADS = 10;

  private FirstPaint() {}

  static List<Line> lines(BoardProcess board) {
    List<Line> lines = new ArrayList<>();
    if (!Files.isExecutable(CHROMIUM)) {
      lines.add(Line.figure("first paint", "no Chromium here"));
      return lines;
    }
    try (Playwright playwright =
            Playwright.create(
                new Playwright.CreateOptions()
                    .setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
        Browser browser =
            playwright
                .chromium()
                .launch(
                    new BrowserType.LaunchOptions()
                        .setExecutablePath(CHROMIUM)
                        .setArgs(List.of("--no-sandbox", "--disable-gpu", "--no-first-run")))) {
      for (String path : List.of("/bench", "/counter", "/cabinet")) {
        double[] ms = new double[LOADS];
        for (int i = 0; i < LOADS; i++) {
          ms[i] = paintMs(browser, board.page(path).toString());
        }
        lines.add(Line.figure("first paint of " + path, Line.figure(Line.median(ms)) + " ms"));
      }
    }
    return lines;
  }

  private static double paintMs(Browser browser, String url) {
    try (BrowserContext context = browser.newContext()) {
      Page page = context.newPage();
      page.navigate(url);
      Object at = null;
      while (at == null) {
        at =
            page.evaluate(
                "(performance.getEntriesByName('first-contentful-paint')[0] || {}).startTime");
      }
      return ((Number) at).doubleValue();
    }
  }
}
