package annulus.web;

import annulus.measure.Side;
import annulus.store.Draft;
import annulus.store.Job;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The form of the bench with what is typed so far. */
final class BenchForm {
  private static final int SHOWN_READINGS = 3;
  private static final List<String> MORE =
      List.of(
          "class",
          "start",
          "primerOn",
          "primerMinutes",
          "temperaturePlusMinus",
          "measuredAt",
          "boreOutside",
          "partInside",
          "bore",
          "comesApartLater",
          "sealNear",
          "electronicsNear",
          "warranty");

  private static final BenchOrder.Typed NOT_YET = new BenchOrder.Typed("", "", "");

  private final Board board;
  private final String who;
  private final Choices choices;
  private final Draft draft;

  BenchForm(Board board, String who, Draft draft) {
    this.board = board;
    this.who = who;
    this.choices = new Choices(board.knowledge(), board.shop());
    this.draft = draft;
  }

  /** Puts it on a page. */
  void on(Markup page) {
    page.open(
        "form",
        "method",
        "post",
        "action",
        "/bench/" + draft.id(),
        "id",
        "bench",
        "data-save",
        "/bench/" + draft.id() + "/save",
        "novalidate",
        "");
    page.single(
        "input",
        "type",
        "hidden",
        "name",
        "version",
        "id",
        "version",
        "value",
        "" + draft.version(),
        "autocomplete",
        "off");
    // the first button is what the enter key presses
    page.element("button", "Save", "name", "act", "value", "keep", "class", "enter");
    Fields f = new Fields(page, draft);
    page.open("div", "class", "two");
    Optional<Job> changed = changed();
    if (changed.isPresent()) {
      String reference = changed.get().content().reference();
      FormField.fixed(page, "reference", "reference", "Job reference (stays)", reference);
    } else {
      f.text("reference", "Job reference", "text", "30");
    }
    f.text("title", "What is it?", "text", "100");
    page.close();
    page.open("div", "class", "two");
    f.choice("lengthUnit", "Lengths in", Map.of("", "mm", "in", "inch"));
    f.choice("temperatureUnit", "Temperatures in", Map.of("", "°C", "F", "°F"));
    f.choice(
        BenchOrder.PLACED,
        "Depth and angle of readings",
        Map.of("", "not noted", "on", "noted: shows oval and taper apart"));
    page.close();
    member(page, f, "bore", "Bore (the hole)", Side.BORE);
    member(page, f, "part", "Part (what goes in)", Side.PART);
    f.text("engagement", "Length they share, " + f.length(), "decimal", "12");
    otherwise(page, f);
    place(page, f);
    load(page, f);
    more(page, f, changed.flatMap(j -> j.content().closedAt()));
    acts(page);
    page.close();
  }

  /** The job whose order the draft is, if any. */
  private Optional<Job> changed() {
    return Optional.of(draft.field(BenchPage.JOB)).filter(id -> !id.isEmpty()).map(board::job);
  }

  private void member(Markup page, Fields f, String name, String title, Side side) {
    page.open("fieldset").element("legend", title);
    page.open("div", "class", "readings", "data-member", name);
    BenchOrder order = new BenchOrder(draft);
    List<BenchOrder.Typed> readings = order.readings(name);
    int shown = Math.min(BenchOrder.MOST_READINGS, Math.max(SHOWN_READINGS, readings.size() + 1));
    for (int i = 1; i <= shown; i++) {
      boolean filled = i <= readings.size();
      BenchOrder.Typed typed = filled ? readings.get(i - 1) : NOT_YET;
      f.reading(name + "-" + i, "Reading " + i, typed, order.placed());
    }
    page.close();
    page.element(
        "p",
        side == Side.BORE
            ? "Turn the instrument between readings, and go in deep and shallow: it shows oval and taper."
            : "Turn the part between readings.",
        "class",
        "hint");
    page.open("div", "class", "two");
    f.choice(name + "Material", "Material", choices.materials());
    f.choice(name + "Instrument", "Read with", choices.instruments(side));
    f.choice(name + "Finish", "Finish of the face", choices.finishes());
    f.choice(name + "State", "Face as it came", Choices.states());
    page.close().close();
  }

  private void place(Markup page, Fields f) {
    page.open("div", "class", "two");
    if (!board.shop().places().isEmpty() || !draft.field("place").isEmpty()) {
      f.choice("place", "Where it cures", choices.places());
    }
    f.text("temperature", "Temperature where it cures, " + f.temperature(), "decimal", "12");
    f.choice("primer", "Primer", choices.primers());
    f.choice("consequence", "If it let go, it", Choices.consequences());
    page.close();
  }

  /** A part of the form that is folded away until something is typed in it. */
  private void fold(Markup page, String summary, List<String> fields) {
    boolean filled = fields.stream().anyMatch(f -> !draft.field(f).isBlank());
    page.open("details", "open", filled ? "" : null).element("summary", summary);
  }

  private void load(Markup page, Fields f) {
    fold(
        page,
        "Load, and heat and cold in use",
        List.of("duty", "repeats", "axialN", "torqueNm", "serviceLow", "serviceHigh"));
    page.open("div", "class", "two");
    f.choice("duty", "Usual load of", choices.duties());
    f.choice("repeats", "How the load comes", Choices.repeats());
    f.text("axialN", "Push or pull along the bore, N", "decimal", "12");
    f.text("torqueNm", "Twist in the bore, N·m", "decimal", "12");
    f.text("serviceLow", "Coldest in use, " + f.temperature(), "decimal", "12");
    f.text("serviceHigh", "Hottest in use, " + f.temperature(), "decimal", "12");
    page.close().close();
  }

  private void otherwise(Markup page, Fields f) {
    fold(
        page,
        "Not measured: a bearing's size, or a gap you know",
        List.of(
            "bore" + BenchOrder.BEARING,
            "part" + BenchOrder.BEARING,
            "gap",
            "gapPlusMinus",
            "diameter"));
    page.open("div", "class", "two");
    f.text("bore" + BenchOrder.BEARING, "Bearing with this bore, " + f.length(), "decimal", "12");
    f.text("part" + BenchOrder.BEARING, "Bearing this wide across, " + f.length(), "decimal", "12");
    f.text("gap", "Known gap, µm (below 0: tight)", "decimal", "12");
    f.text("gapPlusMinus", "Known gap, give or take, µm", "decimal", "12");
    f.choice("gapBasis", "Known gap is told", Choices.gapBases());
    f.text("diameter", "Nominal diameter beside a known gap, " + f.length(), "decimal", "12");
    page.close().close();
  }

  private void more(Markup page, Fields f, Optional<Instant> closed) {
    Map<String, String> hours = startHours(board, draft);
    fold(page, "More: what is near, primer, when, history", MORE);
    page.open("div", "class", "two");
    f.choice("class", "Compound", choices.classes());
    if (closed.isPresent()) {
      String at = board.times().past(closed.get());
      FormField.fixed(page, "start", null, "Joint was closed at (stays)", at);
    } else {
      f.text("start", "Joint is closed at (now, if empty)", "datetime-local", "20");
      whichHour(page, hours);
    }
    f.choice("primerOn", "Primer is on", Choices.primed());
    f.text("primerMinutes", "Primer was put on, minutes ago", "decimal", "12");
    f.text("temperaturePlusMinus", "Curing temperature give or take, °C", "decimal", "12");
    f.text("measuredAt", "Parts when measured, " + f.temperature(), "decimal", "12");
    f.text("boreOutside", "Outside diameter round the bore, " + f.length(), "decimal", "12");
    f.text("partInside", "Inside diameter of the part, " + f.length(), "decimal", "12");
    f.text("bore", "Name of this bore, for its history", "text", "100");
    page.close();
    f.tick("comesApartLater", "Must come apart later");
    f.tick("sealNear", "A seal or open bearing is near");
    f.tick("electronicsNear", "Battery or electronics are near");
    f.tick("warranty", "A warranty claim may be open");
    page.close();
  }

  /** What the start may mean where the clock shows its hour twice; else empty. */
  static Map<String, String> startHours(Board board, Draft draft) {
    return TwoHours.choices(draft.field("start"), board.times().zone());
  }

  /** One that was chosen for another start is not offered again. */
  private void whichHour(Markup page, Map<String, String> hours) {
    if (!hours.isEmpty()) {
      Map<String, String> offered = new LinkedHashMap<>(Map.of("", "choose"));
      offered.putAll(hours);
      String chosen = draft.field(BenchOrder.START_HOUR);
      FormField.choice(
          page,
          BenchOrder.START_HOUR,
          "Closed at: which of the two?",
          offered,
          hours.containsKey(chosen) ? chosen : "");
    }
  }

  private void acts(Markup page) {
    SameReference.tick(page, draft, SameReference.others(board, draft));
    Layout.who(page, who, "bench-");
    page.open("div", "class", "acts");
    if (draft.field(BenchPage.JOB).isEmpty()) {
      page.element("button", "Start the job", "name", "act", "value", "start", "class", "main");
      page.element("button", "Book it for later", "name", "act", "value", "book");
    } else {
      for (String name : List.of(BenchPage.JOB, BenchPage.JOB_VERSION)) {
        FormField.hidden(page, name, draft.field(name));
      }
      page.element("button", "Change the job", "name", "act", "value", "change", "class", "main");
    }
    page.element("button", "Show the answer", "name", "act", "value", "show", "class", "plain");
    page.element("button", "Throw away", "name", "act", "value", "drop", "class", "plain");
    page.close();
  }

  /** Fields of the form, each with its label. */
  private record Fields(Markup page, Draft draft) {
    String length() {
      return draft.field("lengthUnit").equals("in") ? "inch" : "mm";
    }

    String temperature() {
      return draft.field("temperatureUnit").equals("F") ? "°F" : "°C";
    }

    void text(String name, String label, String kind, String longest) {
      new FormField(name, label, kind, draft.field(name), longest, false).on(page);
    }

    /** One reading; where it was taken stands beside it if that is noted. */
    void reading(String name, String label, BenchOrder.Typed typed, boolean placed) {
      page.open("div", "class", placed ? "set placed" : "set");
      part("field reading", name, label + ", " + length(), typed.size());
      if (placed) {
        part("field", name + BenchOrder.DEPTH, label + " depth, mm", typed.depth());
        part("field", name + BenchOrder.ANGLE, label + " angle, °", typed.angle());
      }
      page.close();
    }

    private void part(String look, String name, String label, String value) {
      new FormField(name, label, FormField.DECIMAL, value, "20", false).on(page, look);
    }

    void choice(String name, String label, Map<String, String> choices) {
      FormField.choice(page, name, label, choices, chosen(name));
    }

    /** Readings of an order that holds their places show them whatever was chosen. */
    private String chosen(String name) {
      boolean placed = name.equals(BenchOrder.PLACED) && new BenchOrder(draft).placed();
      return placed ? "on" : draft.field(name);
    }

    void tick(String name, String label) {
      FormField.tick(page, null, name, "on", label, draft.field(name).equals("on"));
    }
  }
}
