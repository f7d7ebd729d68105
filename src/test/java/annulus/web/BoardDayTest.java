package annulus.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.store.Databases;
import com.microsoft.playwright.Download;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.FilePayload;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The day of the mechanic, the service writer and the stock-keeper in a real browser. */
class BoardDayTest {
  private static final ZoneId ZONE = ZoneId.of("Europe/Vienna");

  @TempDir Path folder;

  static List<String> databases() {
    return Databases.names();
  }

  @ParameterizedTest
  @MethodSource("databases")
  void a_whole_day_from_the_first_reading_to_the_reorder(String name) {
    String url = Databases.fresh(name, folder);
    try (RunningBoard board = RunningBoard.on(url);
        Browser browser = Browser.start(name)) {
      Page bench = browser.screen(board, ColorScheme.LIGHT);
      Page counter = browser.screen(board, ColorScheme.DARK);
      String job = measured(browser, bench);
      promised(browser, counter, bench);
      logged(board, browser, counter);
      slipped(board, browser, bench, counter);
      handedBack(board, counter);
      printed(browser, counter, job);
      Page cabinet = browser.screen(board, ColorScheme.LIGHT);
      stocked(browser, cabinet);
      asked(browser, cabinet);
      carriedOver(browser, cabinet);
      assertEquals(List.of(), browser.errors);
    }
  }

  private static Locator button(Page page, String name) {
    return page.getByRole(
        AriaRole.BUTTON, new Page.GetByRoleOptions().setName(name).setExact(true));
  }

  private static void iAm(Page page, String who) {
    page.navigate("/who");
    page.getByLabel("Your name or initials").fill(who);
    button(page, "That's me").click();
    assertThat(page.locator(".who")).hasText("You: " + who);
  }

  /** The mechanic enters readings, sees the answer grow, loses nothing on reload, starts. */
  private static String measured(Browser browser, Page page) {
    iAm(page, "Mira");
    page.navigate("/bench");
    browser.look(page, "bench-start");
    button(page, "Measure a new joint").click();
    page.getByLabel("Job reference").fill("HL-101");
    page.getByLabel("What is it?").fill("Cargo bike, drive-side cup");
    type(page, "bore", "41.966", "41.963", "41.961", "41.966");
    type(page, "part", "41.918", "41.919", "41.918");
    page.locator("#boreInstrument").selectOption("bore-gauge-dial");
    page.locator("#partInstrument").selectOption("outside-micrometer");
    page.locator("#boreMaterial").selectOption("steel-plain");
    assertThat(page.locator("#preview")).containsText("Still needed");
    page.locator("#partMaterial").selectOption("steel-alloy");
    page.locator("#partFinish").selectOption("ground");
    page.locator("#engagement").fill("11");
    page.locator("#place").selectOption("bench");
    page.locator("#primer").selectOption("primer-solvent");
    assertThat(page.locator("#preview")).containsText("USE");
    String before = page.locator("#preview figure").first().innerHTML();
    page.reload();
    assertThat(page.locator("#bore-4")).hasValue("41.966");
    assertThat(page.locator("#bore-5")).isVisible();
    page.locator("#bore-1").fill("41.980");
    page.waitForFunction(
        "old => document.querySelector('#preview figure') && document.querySelector('#preview"
            + " figure').innerHTML !== old",
        before);
    page.locator("#bore-1").fill("41.966");
    page.getByText("Load, and heat").click();
    page.getByText("More: what is near").click();
    page.locator("#bore").fill("Frame 3, drive side");
    browser.look(page, "bench-joint");
    button(page, "Start the job").click();
    assertThat(page.locator("h1")).containsText("Job HL-101");
    page.getByLabel("Customer wants it by").fill("2027-03-13T12:00");
    button(page, "What if?").click();
    assertThat(page.locator("table").first()).containsText("cupboard");
    browser.look(page, "job-in-work");
    button(page, "Joint closed now").click();
    assertThat(page.locator("#live")).containsText("curing until");
    return page.url();
  }

  /** A logger lay beside the joint: the screen follows it. */
  private static void logged(RunningBoard board, Browser browser, Page counter) {
    board.clock.forward(Duration.ofMinutes(30));
    counter.getByText("Judge it by a temperature log").click();
    byte[] log = RunningBoard.coldLog(board.clock.instant()).getBytes(StandardCharsets.UTF_8);
    counter.locator("#log").setInputFiles(new FilePayload("bench.csv", "text/csv", log));
    button(counter, "Judge by this log").click();
    assertThat(counter.locator(".log")).containsText("of full strength, for sure");
    assertThat(counter.locator(".history")).containsText("temperature log bench.csv read");
    browser.look(counter, "job-log-dark");
  }

  /** Questions without a job: a fit, a list, a label, what the shop saw. */
  private static void asked(Browser browser, Page page) {
    page.navigate("/bench");
    page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Fit designation")).click();
    page.locator("#fit").fill("35 H7/k6");
    page.locator("#bore").fill("35.012 35.013");
    button(page, "What does it allow?").click();
    assertThat(page.locator("pre")).containsText("TRANSITION FIT");
    assertThat(page.locator(".preview .decision")).containsText("can't tell");
    browser.look(page, "fit");
    page.navigate("/tools/batch");
    page.locator("#file").setInputFiles(Path.of("demo-data/jobs.csv"));
    browser.look(page, "batch");
    Download results =
        page.waitForDownload(() -> button(page, "Answer all, as a CSV file").click());
    assertEquals("results.csv", results.suggestedFilename());
    button(page, "When is each ready?").click();
    assertThat(page.locator("pre")).containsText("missing their promise");
    browser.look(page, "ready");
    page.navigate("/tools/learn");
    page.locator("#file").setInputFiles(Path.of("demo-data/observations.csv"));
    button(page, "What does it teach?").click();
    assertThat(page.locator("main")).containsText("joints watched");
    browser.look(page, "learn");
    page.navigate("/tools/label");
    RunningBoard.label().properties().forEach(e -> filled(page, e.getKey(), e.getValue().asText()));
    button(page, "Show the class").click();
    assertThat(page.locator("main")).containsText("The class it makes");
    browser.look(page, "label");
  }

  private static void filled(Page page, String field, String value) {
    Locator at = page.locator("#" + field);
    if (at.evaluate("e => e.tagName").equals("SELECT")) {
      at.selectOption(value);
    } else {
      at.fill(value);
    }
  }

  /** The ledger goes out as a file and comes back: nothing counts twice. */
  private static void carriedOver(Browser browser, Page page) {
    page.navigate("/cabinet");
    Download ledger =
        page.waitForDownload(() -> page.getByText("Download as a ledger file").click());
    page.getByText("Take over a ledger file").click();
    page.locator("#ledger").setInputFiles(ledger.path());
    button(page, "Take it over").click();
    assertThat(page.locator("h1")).hasText("Ledger taken over");
    assertThat(page.locator("main")).containsText("0 new movements");
    browser.look(page, "ledger");
  }

  private static void type(Page page, String member, String... readings) {
    for (int i = 0; i < readings.length; i++) {
      page.locator("#" + member + "-" + (i + 1)).fill(readings[i]);
    }
  }

  /** The service writer promises; the mechanic's screen shows it without a reload. */
  private static void promised(Browser browser, Page counter, Page bench) {
    iAm(counter, "Ede");
    assertThat(counter.locator(".card")).containsText("can promise");
    counter.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("HL-101")).click();
    browser.look(counter, "job-curing-dark");
    button(counter, "Promise this time").click();
    assertThat(counter.locator(".history")).containsText("Ede: customer was told");
    assertThat(bench.locator("#live")).containsText("promised");
    assertThat(bench.locator("#changed")).isVisible();
  }

  /** The joint is made anew hours later: it slips, says why, and is promised anew. */
  private static void slipped(RunningBoard board, Browser browser, Page bench, Page counter) {
    board.clock.forward(Duration.ofMinutes(5));
    // the bench still shows what was there before the promise: it is told, nothing is written
    button(bench, "Taken apart: in work again").click();
    assertThat(bench.locator("h1")).hasText("Somebody else was quicker");
    browser.look(bench, "conflict");
    bench.getByText("Look at the job and decide").click();
    button(bench, "Taken apart: in work again").click();
    assertThat(button(bench, "Joint closed now")).isVisible();
    board.clock.forward(Duration.ofHours(80));
    bench.reload();
    button(bench, "Joint closed now").click();
    assertThat(bench.locator("#live")).containsText("curing until");
    counter.navigate("/counter");
    assertThat(counter.locator(".slip")).containsText("later than the promise was reckoned from");
    browser.look(counter, "counter-slips-dark");
    counter.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("HL-101")).click();
    button(counter, "Promise anew").click();
    assertThat(counter.locator("#live")).not().containsText("Slips");
  }

  private static void handedBack(RunningBoard board, Page counter) {
    String when = counter.locator("#promised").inputValue();
    Instant promised = LocalDateTime.parse(when).atZone(ZONE).toInstant();
    counter.navigate("/counter");
    board.clock.set(promised.minus(Duration.ofMinutes(15)));
    assertThat(counter.locator(".card")).containsText("cured, to check");
    button(counter, "Checked and good").click();
    assertThat(counter.locator(".card")).containsText("checked");
    button(counter, "Customer told").click();
    assertThat(counter.locator(".card")).containsText("customer told");
    button(counter, "Collected").click();
    assertThat(counter.locator(".card")).containsText("collected");
  }

  private static void printed(Browser browser, Page page, String job) {
    page.navigate(job + "/card");
    assertThat(page.locator(".box .code svg")).isVisible();
    Object height = page.evaluate("document.body.scrollHeight");
    Object room = page.evaluate("document.body.clientHeight");
    assertTrue(((Number) height).intValue() <= ((Number) room).intValue() + 1, "card overflows");
    Object cut =
        page.evaluate(
            "document.querySelector('.when').scrollWidth > "
                + "document.querySelector('.when').clientWidth");
    assertEquals(false, cut, "the time of the hand-back is cut off");
    page.setViewportSize(560, 800);
    page.screenshot(new Page.ScreenshotOptions().setPath(Path.of("target", "screens", "card.png")));
    page.navigate(job + "/tag");
    assertThat(page.locator("h1")).hasText("DO NOT USE BEFORE");
    page.setViewportSize(1024, 800);
    page.navigate(job);
    browser.look(page, "job-collected");
    page.getByText("Every number with its source").click();
    assertThat(page.locator("table")).containsText("release after injury");
    browser.look(page, "sources");
  }

  private static void stocked(Browser browser, Page page) {
    iAm(page, "Orla");
    page.navigate("/cabinet");
    page.getByLabel("Lot", new Page.GetByLabelOptions().setExact(true)).selectOption("007");
    page.locator("#ml").fill("0.5");
    page.locator("#job").fill("HL-101");
    button(page, "Use").click();
    assertThat(page.locator(".history")).containsText("Orla: use 0.5 mL, lot 007 for job HL-101");
    page.getByText("Take in a new lot").click();
    page.locator("#newLot").fill("KB-9");
    page.locator("#item").selectOption("medium-lasting");
    page.locator("#container").fill("10");
    page.locator("#expires").fill("2028-06-30");
    button(page, "Take in").click();
    assertThat(page.locator(".lots")).containsText("Lot KB-9");
    browser.look(page, "cabinet");
    page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Lot 007")).click();
    assertThat(page.locator(".history")).containsText("job HL-101");
    browser.look(page, "lot");
  }
}
