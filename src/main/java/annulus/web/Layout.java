package annulus.web;

import java.util.List;

/** The frame of every page: the three places, who is working, and what is inside. */
final class Layout {
  /** Where a page belongs. */
  enum Place {
    BENCH("Bench", "/bench"),
    COUNTER("Counter", "/counter"),
    CABINET("Cabinet", "/cabinet"),
    NONE("", "");

    private final String name;
    private final String path;

    Place(String name, String path) {
      this.name = name;
      this.path = path;
    }
  }

  private Layout() {}

  /**
   * A whole page.
   *
   * @param title its name
   * @param place which of the three places it belongs to
   * @param who who is working, empty when not said
   * @param inside what is in it
   */
  static String page(String title, Place place, String who, Markup inside) {
    Markup page = new Markup();
    page.open("html", "lang", "en").open("head");
    page.single("meta", "charset", "utf-8");
    page.single("meta", "name", "viewport", "content", "width=device-width, initial-scale=1");
    page.single("meta", "name", "color-scheme", "content", "light dark");
    page.element("title", title + " · annulus");
    page.single("link", "rel", "stylesheet", "href", "/board.css");
    page.single("link", "rel", "icon", "href", "/mark.svg", "type", "image/svg+xml");
    page.element("script", "", "src", "/board.js", "defer", "");
    page.close().open("body");
    page.element("a", "Skip to the page", "class", "skip", "href", "#main");
    header(page, place, who);
    page.element(
        "p",
        "Not connected to the board: what you see may be old.",
        "id",
        "offline",
        "role",
        "alert",
        "hidden",
        "");
    page.open("main", "id", "main", "tabindex", "-1").part(inside).close();
    page.close().close();
    return "<!DOCTYPE html>\n" + page.html() + "\n";
  }

  private static void header(Markup page, Place current, String who) {
    page.open("header", "class", "top").open("nav", "aria-label", "Places");
    for (Place place : List.of(Place.BENCH, Place.COUNTER, Place.CABINET)) {
      String here = place == current ? "page" : null;
      page.element("a", place.name, "href", place.path, "aria-current", here);
    }
    page.close();
    page.open("a", "class", "who", "href", "/who");
    page.text(who.isEmpty() ? "Who are you?" : "You: " + who).close();
    page.close();
  }

  /** The name of whoever does something: remembered, or asked for. */
  static void who(Markup form, String who, String idPrefix) {
    if (!who.isEmpty()) {
      FormField.hidden(form, "who", who);
      return;
    }
    String id = idPrefix + "who";
    form.open("p", "class", "field");
    form.element("label", "Your name or initials", "for", id);
    form.single(
        "input",
        "id",
        id,
        "name",
        "who",
        "required",
        "",
        "maxlength",
        "40",
        "autocomplete",
        "name");
    form.close();
  }

  /** What is wrong with a form that comes back filled in: seen and read out first. */
  static Markup lookAgain(Markup problems) {
    Markup told = new Markup();
    told.open("div", "class", "problem", "role", "alert", "tabindex", "-1", "autofocus", "");
    return told.element("h2", "Please look again").part(problems).close();
  }

  /** A page that says what was done and where to go on. */
  static String done(String title, List<String> lines, String backPath, String who) {
    Markup inside = new Markup();
    inside.element("h1", title).open("ul");
    lines.forEach(l -> inside.element("li", l));
    inside.close();
    inside.open("p").element("a", "Back", "class", "button", "href", backPath).close();
    return page(title, Place.NONE, who, inside);
  }

  /** A page that says what is wrong and where to go on. */
  static String problem(String title, List<String> lines, String backPath, String who) {
    Markup inside = new Markup();
    inside.element("h1", title);
    inside.open("div", "class", "problem", "role", "alert");
    lines.forEach(l -> inside.element("p", l));
    inside.close();
    inside.open("p").element("a", "Back", "class", "button", "href", backPath).close();
    return page(title, Place.NONE, who, inside);
  }
}
