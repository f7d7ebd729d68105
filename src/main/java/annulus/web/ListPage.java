package annulus.web;

import annulus.advice.Learned;
import annulus.report.LearnedPicture;
import annulus.report.LearnedText;
import annulus.report.OverlayJson;
import java.util.List;

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
  static String batch(String who) {
    Markup page = new Markup();
    page.element("h1", "Many joints at once");
    page.element(
        "p",
        "A CSV file with a header and one joint a row, as the command advise --batch reads it. The"
            + " results come back as a CSV file with a row for every row read; a row that can't be"
            + " used says why. No job is entered.");
    upload(page, "/tools/batch", "Job list, CSV, at most 5 MB", "or paste it here");
    page.element("button", "Answer all", "class", "main", "type", "submit").close();
    return Layout.page("Many joints", Layout.Place.BENCH, who, page);
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
