package annulus.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.Advice;
import annulus.advice.OrderText;
import annulus.report.HandBackNotes;
import annulus.report.JobCard;
import annulus.report.TagSheet;
import com.microsoft.playwright.Page;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What is printed stays on its paper, whatever the joint. */
class PaperSizeTest {
  private static final ZoneId VIENNA = ZoneId.of("Europe/Vienna");

  /** Height of the content over that of the page, px; and whether anything is wider than it. */
  private static final String OVER =
      "(() => { const b = document.body; const wide = [...b.querySelectorAll('*')].some(e =>"
          + " e.getBoundingClientRect().right > b.getBoundingClientRect().right + 1);"
          + " return (b.scrollHeight - b.clientHeight) + ' ' + wide; })()";

  private static final String FOOT =
      "(() => { const b = document.body.getBoundingClientRect(); const f ="
          + " document.querySelector('footer').getBoundingClientRect();"
          + " return (b.bottom - f.bottom) * 25.4 / 96; })()";

  /** The orders of the demonstration and joints with much to say. */
  private static Map<String, Advice> answers() throws IOException {
    Map<String, Advice> answers = new LinkedHashMap<>();
    try (Stream<Path> files = Files.list(Path.of("demo-data/orders"))) {
      for (Path file : files.sorted().toList()) {
        answers.put(file.toString(), advice(Files.readString(file)));
      }
    }
    OrderText near = new OrderText().set("primer", null).set("serviceHighC", 60);
    for (String flag : List.of("sealNear", "electronicsNear", "comesApartLater", "warranty")) {
      near.set(flag, true);
    }
    answers.put("near", near.advice());
    answers.put("near, a nuisance", near.set("consequence", "nuisance").advice());
    answers.put("near, inert", near.faces("aluminium-6061", "anodised").advice());
    near.set("consequence", null).set("title", "W".repeat(70)).set("job", "M".repeat(30));
    answers.put(
        "near, carbon",
        near.set("bore.material", "carbon-epoxy").set("bore.finish", "moulded").advice());
    answers.put("near, read twice", near.bore(30.03, 30.055).advice());
    return answers;
  }

  private static Advice advice(String json) {
    return OrderText.ADVISOR.advise(OrderText.read(json));
  }

  @Test
  void no_card_runs_off_its_paper() throws IOException {
    try (Browser browser = Browser.start("paper")) {
      Page page = browser.paper();
      page.setViewportSize(559, 794);
      for (Map.Entry<String, Advice> answer : answers().entrySet()) {
        page.setContent(JobCard.of(answer.getValue(), OrderText.KNOWLEDGE.catalog()));
        assertEquals("0 false", page.evaluate(OVER), answer.getKey());
        double foot = ((Number) page.evaluate(FOOT)).doubleValue();
        assertTrue(foot >= 5, answer.getKey() + ": " + foot + " mm under the last line");
      }
    }
  }

  @Test
  void a_tag_with_its_longest_words_stays_on_its_paper_and_the_time_stays_the_largest() {
    Advice limited = new OrderText().set("consequence", "nuisance").advice();
    Instant back = limited.handBack().orElseThrow().at();
    String limit = new HandBackNotes(limited).limitedUse(back, VIENNA).orElseThrow();
    List<String> meanwhile = List.of("Leave the joint alone.", "No load, no use until then.");
    try (Browser browser = Browser.start("paper")) {
      Page page = browser.paper();
      page.setViewportSize(397, 560);
      Instant twice = Instant.parse("2027-10-31T00:15:00Z");
      for (Instant when : List.of(back, twice)) {
        String title = "Wheel bearing seat of the left rear hub, ".repeat(3).substring(0, 100);
        String reference = "HL-2027-0417/Wheels-left-rear2";
        TagSheet tag = new TagSheet(reference, title, when, VIENNA, meanwhile, Optional.of(limit));
        page.setContent(tag.html());
        assertEquals("0 false", page.evaluate(OVER), when.toString());
        double rest =
            ((Number)
                    page.evaluate(
                        "(document.body.getBoundingClientRect().bottom -"
                            + " document.body.lastElementChild.getBoundingClientRect().bottom)"
                            + " * 25.4 / 96"))
                .doubleValue();
        assertTrue(rest >= 5, rest + " mm under the last line");
        Object larger =
            page.evaluate(
                "(() => { const size = e => parseFloat(getComputedStyle(e).fontSize); const h ="
                    + " size(document.querySelector('.date')); return"
                    + " [...document.querySelectorAll('li,.limited,.job,.title')].some(e =>"
                    + " size(e) >= h); })()");
        assertEquals(false, larger);
      }
    }
  }
}
