package annulus.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.report.LotTag;
import annulus.stock.HeldBack;
import annulus.stock.Lot;
import annulus.stock.LotCheck;
import annulus.stock.Lots;
import annulus.stock.SafetySheet;
import com.microsoft.playwright.Page;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** The label of a lot as a browser sets it, in the fonts of the machine. */
class LotTagPageTest {
  private static final LocalDate OPENED = Lots.DAY.minusMonths(5);
  private static final LocalDate OPENED_LONG_AGO = Lots.DAY.minusYears(2);
  private static final LocalDate EXPIRES = Lots.DAY.plusYears(1);

  /**
   * Elements in which words or a whole line have no room, or that run over the label's end. A
   * letter's box may be taller than its line by a few px.
   */
  private static final String CUT_OFF =
      "[...document.querySelectorAll('h1, p, span')].filter(e => e.scrollWidth > e.clientWidth + 1"
          + " || e.scrollHeight > e.clientHeight + 6 || e.getBoundingClientRect().bottom > document.body.getBoundingClientRect().bottom)"
          + ".map(e => e.className || e.tagName).join(' ')";

  private static Lot named(Lot lot, String label, OptionalDouble lowC, OptionalDouble highC) {
    return new Lot(
        lot.lot(),
        lot.item(),
        label,
        lot.container(),
        lot.left(),
        lot.received(),
        lot.opened(),
        lot.expires(),
        "",
        SafetySheet.NONE,
        lowC,
        highC,
        List.of());
  }

  private static Lot named(Lot lot, String label) {
    return named(lot, label, OptionalDouble.empty(), OptionalDouble.empty());
  }

  private static Map<String, Lot> lots() {
    Map<String, Lot> lots = new LinkedHashMap<>();
    lots.put("sealed", named(Lots.sealed("1E5", "a", 5, EXPIRES), "spare"));
    lots.put("no-date", named(Lots.lot("2", "a", 5, null, null, null), "found behind the vice"));
    Lot open = Lots.lot("LOT-20260101-ABC-1234", "a", 5, null, OPENED, EXPIRES);
    lots.put("open", named(open, "The one from the oven bench"));
    Lot past = Lots.lot("KB-2211", "a", 5, null, OPENED_LONG_AGO, EXPIRES);
    lots.put("opened-too-long", named(past, "small green-door bottle"));
    lots.put(
        "everything-against",
        named(
            Lots.lot("KB-2212", "a", 5, Lots.DAY.plusDays(1), Lots.DAY.plusDays(2), EXPIRES),
            "The one from the oven bench, for the large hubs",
            OptionalDouble.of(-5),
            OptionalDouble.of(45)));
    lots.put(
        "past-hot-cold",
        named(past, "spray, one corner left", OptionalDouble.of(-5), OptionalDouble.of(45)));
    HeldBack frozen = new HeldBack("h", Lots.DAY, "Ines", "seen frozen in the van overnight");
    lots.put("held", lots.get("everything-against").heldBackFor(List.of(frozen)));
    HeldBack wordy = new HeldBack("h", Lots.DAY, "Ines", "W".repeat(200));
    lots.put("held-wordy", lots.get("past-hot-cold").heldBackFor(List.of(wordy)));
    return lots;
  }

  private static void set(Page page, Lot lot) {
    LotCheck check = LotCheck.of(lot, Lots.items().get(lot.item()), Lots.DAY, 30);
    page.setContent(new LotTag(check, Lots.DAY).html());
  }

  private static boolean runsOver(Page page) {
    return (Boolean) page.evaluate("document.body.scrollHeight > document.body.clientHeight");
  }

  @Test
  void nothing_on_a_lot_s_label_is_cut_off_or_runs_over() {
    try (Browser browser = Browser.start("labels")) {
      Page page = browser.paper();
      page.setViewportSize(240, 160);
      for (Map.Entry<String, Lot> lot : lots().entrySet()) {
        set(page, lot.getValue());
        Path picture = Path.of("target", "screens", "label-" + lot.getKey() + ".png");
        page.screenshot(new Page.ScreenshotOptions().setPath(picture));
        assertEquals(false, runsOver(page), lot.getKey() + " runs over");
        assertEquals("", page.evaluate(CUT_OFF), lot.getKey() + " is cut off");
      }
      assertEquals(List.of(), browser.errors);
    }
  }

  /** The shop may call a lot what it likes: the use-by and the reason still stand whole. */
  @Test
  void words_too_long_for_a_label_end_with_a_mark_and_push_nothing_off_it() {
    try (Browser browser = Browser.start("labels")) {
      Page page = browser.paper();
      page.setViewportSize(240, 160);
      String wide = "W".repeat(400);
      Lot past = Lots.lot(wide, "a", 5, null, OPENED_LONG_AGO, EXPIRES);
      set(page, named(past, wide, OptionalDouble.of(-5), OptionalDouble.of(45)));
      page.screenshot(
          new Page.ScreenshotOptions().setPath(Path.of("target", "screens", "label-wide.png")));
      assertEquals(false, runsOver(page));
      assertEquals("H1 lot", page.evaluate(CUT_OFF));
      assertEquals("DO NOT USE", page.locator(".use-by").textContent());
      assertTrue(page.locator(".reason").textContent().endsWith("2 more: see the stock check"));
    }
  }
}
