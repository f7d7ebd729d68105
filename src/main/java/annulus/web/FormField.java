package annulus.web;

import java.util.Map;

/**
 * A field of a form with its label.
 *
 * @param name its name, also its id
 * @param label what is to be typed
 * @param kind {@code decimal} for a number, else the type of an HTML input
 * @param value what stands in it
 * @param longest most characters
 * @param required whether it must be filled in
 */
record FormField(
    String name, String label, String kind, String value, String longest, boolean required) {
  static final String DECIMAL = "decimal";

  /** Puts it on a page. */
  void on(Markup page) {
    on(page, "field");
  }

  /**
   * Puts it on a page.
   *
   * @param look class of the style sheet
   */
  void on(Markup page, String look) {
    boolean number = kind.equals(DECIMAL);
    page.open("p", "class", look).element("label", label, "for", name);
    page.single(
        "input",
        "id",
        name,
        "name",
        name,
        "value",
        value,
        "type",
        number ? "text" : kind,
        "inputmode",
        number ? DECIMAL : null,
        "required",
        required ? "" : null,
        "maxlength",
        longest,
        "autocomplete",
        "off");
    page.close();
  }

  /**
   * Puts something on a page that stands where a field would, and can't be changed.
   *
   * @param sent name under which it is sent along; null: not sent
   */
  static void fixed(Markup page, String id, String sent, String label, String value) {
    page.open("p", "class", "field").element("label", label, "for", id);
    page.single("input", "id", id, "name", sent, "value", value, "type", "text", "readonly", "");
    page.close();
  }

  /**
   * Puts a choice on a page, the empty one first if there is one. What is chosen already stands
   * there even if it can't be chosen any more: sent again it must not turn into another.
   *
   * @param choices words by what is sent
   * @param chosen what is chosen
   */
  static void choice(
      Markup page, String name, String label, Map<String, String> choices, String chosen) {
    page.open("p", "class", "field").element("label", label, "for", name);
    page.open("select", "id", name, "name", name);
    if (choices.containsKey("")) {
      option(page, "", choices.get(""), chosen);
    }
    choices.forEach(
        (id, words) -> {
          if (!id.isEmpty()) {
            option(page, id, words, chosen);
          }
        });
    if (!choices.containsKey(chosen) && !chosen.isEmpty()) {
      option(page, chosen, chosen, chosen);
    }
    page.close().close();
  }

  /** Puts on a page what is sent along and not shown. */
  static void hidden(Markup page, String name, String value) {
    page.single("input", "type", "hidden", "name", name, "value", value);
  }

  /**
   * Puts a tick on a page.
   *
   * @param id its id; null: none
   * @param value what is sent when it is set
   */
  static void tick(
      Markup page, String id, String name, String value, String label, boolean checked) {
    page.open("p", "class", "tick").open("label");
    page.single(
        "input",
        "type",
        "checkbox",
        "id",
        id,
        "name",
        name,
        "value",
        value,
        "checked",
        checked ? "" : null);
    page.element("span", label).close().close();
  }

  private static void option(Markup page, String id, String words, String chosen) {
    page.element("option", words, "value", id, "selected", id.equals(chosen) ? "" : null);
  }
}
