package annulus.web;

import annulus.advice.Learned;
import annulus.report.LearnedPicture;
import annulus.report.LearnedText;
import annulus.report.OverlayJson;
import java.util.List;
import java.util.Optional;

/** Pages that take a whole file: a job list, and what the shop saw of its own joints. */
final class ListPage {
  private ListPage() {}

  private static Markup upload(Markup page, String action, String file, String paste) {
    page.open("form", "method", "post", "action", action, "enctype", "multipart/form-data");
    page.open("div", "class", "sheet");
    Upload.field(page, "file", file);
    Upload.paste(page, "text", paste);
    return page.close();
  }

  /** Many joints at once. */
  static String batch(String who, Optional<ReadyList> ready) {
    Markup page = new Markup();
    page.element("h1", "Many joints at once");
    page.element(
        "p",
        "A CSV file with a header and one joint a row, as the command advise --batch reads it. The"
            + " results come back as a CSV file with a row for every row read; a row that can't be"
            + " used says why. Or see when each is ready, and which of the times in its column"
            + " \"promised\" can't be kept. No job is entered.");
    upload(page, "/tools/batch", "Job list, CSV, at most 5 MB", "or paste it here");
    page.open("div", "class", "acts");
    page.element("button", "Answer all, as a CSV file", "class", "main", "type", "submit");
    page.element("button", "When is each ready?", "name", "act", "value", "ready").close().close();
    ready.ifPresent(r -> ready(page, r));
    return Layout.page("Many joints", Layout.Place.BENCH, who, page);
  }

  private static void ready(Markup page, ReadyList ready) {
    page.element("h2", "When each is ready");
    if (!ready.problems().isEmpty()) {
      page.open("div", "class", "problem", "role", "alert");
      ready.problems().forEach(p -> page.element("p", p.toString()));
      page.close();
    }
    page.element("pre", ready.text(), "tabindex", "0", "aria-label", "When each is ready");
  }

  /** What the shop saw, and what it teaches. */
  static String learn(String who, List<Learned> learned) {
    Markup page = new Markup();
    page.element("h1", "What the shop saw");
    page.element(
        "p",
        "A CSV file of joints that were watched: whether they were fixed, and how hard they were to"
            + " pull. Nothing is written here: the answers of this board stay as they are.");
    upload(page, "/tools/learn", "Observations, CSV, at most 5 MB", "or paste them here");
    page.element("button", "What does it teach?", "class", "main", "type", "submit").close();
    if (!learned.isEmpty()) {
      taught(page, learned);
    }
    return Layout.page("What the shop saw", Layout.Place.CABINET, who, page);
  }

  private static void taught(Markup page, List<Learned> learned) {
    page.element("h2", "What it teaches");
    page.element("pre", LearnedText.of(learned), "tabindex", "0", "aria-label", "What it teaches");
    for (Learned one : learned) {
      page.open("figure").picture(LearnedPicture.of(one)).close();
    }
    page.element("h2", "To put it in force");
    page.element(
        "p",
        "Save the text below as compounds.json in the shop's own folder, or write it with learn"
            + " OBSERVATIONS.csv --out FOLDER, and start the board anew with --data FOLDER.");
    page.open("details").element("summary", "compounds.json");
    page.element("pre", OverlayJson.of(learned), "tabindex", "0", "aria-label", "compounds.json");
    page.close();
  }
}
