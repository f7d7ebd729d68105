package annulus.report;

import annulus.advice.Advice;
import annulus.advice.JointOrder;
import annulus.advice.Knowledge;
import annulus.advice.Member;
import annulus.catalog.CompoundClass;
import annulus.catalog.Confidence;
import annulus.catalog.NamedNumber;
import annulus.catalog.Primer;
import annulus.catalog.Provenance;
import annulus.hold.FactorCurve;
import annulus.hold.HoldTables;
import annulus.quantity.Units;
import annulus.select.ClassVerdict;
import annulus.select.Condition;
import annulus.select.Finding;
import annulus.select.Rule;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Every number that an answer rests on, by the row of {@code data/} it stands in, with the row's
 * source and confidence. The numbers of a row are read off its record, so that none can be left
 * out.
 */
public final class SourceList {
  private static final Provenance LAW = new Provenance("law of nature", Confidence.HIGH);

  private final Map<String, Entry> entries = new LinkedHashMap<>();
  private final Advice advice;
  private final Knowledge knowledge;

  /**
   * One row.
   *
   * @param what the row
   * @param numbers its numbers by name; for a rule those of its test
   * @param provenance source and confidence
   */
  public record Entry(String what, Map<String, Double> numbers, Provenance provenance) {}

  private SourceList(Advice advice, Knowledge knowledge) {
    this.advice = advice;
    this.knowledge = knowledge;
  }

  /** All rows behind an answer, in a fixed order. */
  public static List<Entry> of(Advice advice, Knowledge knowledge) {
    SourceList list = new SourceList(advice, knowledge);
    list.members();
    list.chosen();
    list.hold();
    list.press();
    list.policy();
    list.rules();
    list.laws();
    return List.copyOf(list.entries.values());
  }

  /** The list as text, what was said and what was assumed first. */
  public static String text(Advice advice, Knowledge knowledge) {
    TextLines out = new TextLines();
    out.line("Numbers behind the answer, each row with its source and confidence");
    out.heading("From the order: readings, gap, engagement, temperatures, load (input)");
    for (JointOrder.Assumption a : advice.order().assumptions()) {
      out.hanging("  ", a.field() + " " + a.value() + ": assumed, " + a.why());
    }
    out.heading("From the data, version " + advice.dataVersion());
    for (Entry entry : of(advice, knowledge)) {
      Provenance from = entry.provenance();
      out.hanging(
          "  ",
          entry.what()
              + " ["
              + from.confidence().name().toLowerCase(java.util.Locale.ROOT)
              + "; "
              + from.source()
              + "]");
      if (!entry.numbers().isEmpty()) {
        List<String> said = new ArrayList<>();
        entry.numbers().forEach((name, value) -> said.add(name + " " + RowNumbers.plain(value)));
        out.hanging("    ", String.join(", ", said));
      }
    }
    return out.toString();
  }

  private void add(String what, Object row, Provenance provenance) {
    entries.putIfAbsent(what, new Entry(what, RowNumbers.of(row), provenance));
  }

  private void members() {
    for (Member member : List.of(advice.order().bore(), advice.order().part())) {
      add("material " + member.material().id(), member.material(), member.material().provenance());
      add("finish " + member.finish().id(), member.finish(), member.finish().provenance());
      var activity = knowledge.catalog().activities().get(member.activity());
      add("activity " + RowNumbers.word(activity.level()), activity, activity.provenance());
      member
          .instrument()
          .ifPresent(
              i ->
                  i.spans()
                      .forEach(
                          s ->
                              add(
                                  "instrument "
                                      + i.id()
                                      + ", "
                                      + RowNumbers.word(s.use())
                                      + " to "
                                      + RowNumbers.plain(s.upToMm())
                                      + " mm",
                                  s,
                                  s.provenance())));
    }
  }

  /** The chosen class, or all that were judged where none was. */
  private void chosen() {
    List<CompoundClass> classes =
        advice
            .decision()
            .compound()
            .map(List::of)
            .orElse(advice.table().stream().map(ClassVerdict::compound).toList());
    classes.forEach(c -> add("class " + c.id(), c, c.provenance()));
    advice.decision().primer().ifPresent(p -> primer(p.primer()));
    if (advice.order().primer() instanceof JointOrder.PrimerPlan.Used used) {
      primer(used.primer());
    }
    var release = knowledge.catalog().release().get(advice.order().consequence());
    add(
        "release after " + RowNumbers.word(advice.order().consequence()),
        release,
        release.provenance());
  }

  private void primer(Primer primer) {
    add("primer " + primer.id(), primer, primer.provenance());
  }

  private void hold() {
    if (advice.hold().isEmpty()) {
      return;
    }
    HoldTables tables = knowledge.hold();
    curve("hold factor, gap at ", tables.gap());
    curve("hold factor, length over diameter at ", tables.engagement());
    for (Member member : List.of(advice.order().bore(), advice.order().part())) {
      named("hold factor, face ", member.material().bondFace(), tables.surfaces());
    }
    add("hold, largest pressure of a bond", tables.pressureMaxMPa());
    add("hold, least strength of a bond with friction", tables.shearMinMPa());
    add("volume, wetting film", tables.wettingFilmUm());
    advice
        .order()
        .load()
        .ifPresent(l -> named("hold factor, load ", l.repeats(), tables.dynamics()));
  }

  private void add(String what, HoldTables.Named row) {
    add(what, row, row.provenance());
  }

  private void curve(String what, FactorCurve curve) {
    for (FactorCurve.Point point : curve.points()) {
      add(what + RowNumbers.plain(point.at()), point, point.provenance());
    }
  }

  private void named(String what, String key, Map<String, HoldTables.Named> rows) {
    HoldTables.Named row = rows.get(key);
    if (row != null) {
      add(what + key, row, row.provenance());
    }
  }

  private void press() {
    if (advice.press().isEmpty()) {
      return;
    }
    knowledge
        .friction()
        .rows()
        .forEach(
            r ->
                add(
                    "friction "
                        + String.join(
                            ", ",
                            RowNumbers.word(r.pair()),
                            RowNumbers.word(r.method()),
                            RowNumbers.word(r.state())),
                    r,
                    r.provenance()));
    var press = knowledge.press();
    add("press, smoothing", press.smoothingLoss(), press.smoothingLoss().provenance());
    add("press, slip clearance", press.slipClearance(), press.slipClearance().provenance());
    add(
        "press, bearing clearance",
        press.bearingClearanceLoss(),
        press.bearingClearanceLoss().provenance());
  }

  private void policy() {
    knowledge.catalog().policy().numbers().values().stream()
        .sorted(java.util.Comparator.comparing(NamedNumber::id))
        .forEach(n -> add("policy " + n.id(), n, n.provenance()));
  }

  private void rules() {
    List<Finding> spoke = new ArrayList<>(advice.cautions());
    spoke.addAll(advice.decision().because());
    advice.table().forEach(v -> spoke.addAll(v.findings()));
    spoke.stream()
        .map(Finding::rule)
        .sorted(java.util.Comparator.comparing(Rule::id))
        .forEach(r -> rule("rule " + r.id(), r));
    // a rule that kept silent decided too, by its numbers
    knowledge.rules().rules().stream()
        .filter(r -> !entries.containsKey("rule " + r.id()) && !numbers(r.when()).isEmpty())
        .forEach(r -> rule("rule " + r.id() + " (kept silent)", r));
  }

  private void rule(String what, Rule rule) {
    entries.putIfAbsent(what, new Entry(what, numbers(rule.when()), rule.provenance()));
  }

  /** The fixed numbers of a rule's test, by the fact they stand against. */
  private static Map<String, Double> numbers(Condition when) {
    Map<String, Double> numbers = new LinkedHashMap<>();
    if (when instanceof Condition.Against a) {
      numbers.put(a.fact().id() + " " + RowNumbers.word(a.comparison()), a.limit());
    } else if (when instanceof Condition.All all) {
      all.parts().forEach(p -> numbers.putAll(numbers(p)));
    } else if (when instanceof Condition.Any any) {
      any.parts().forEach(p -> numbers.putAll(numbers(p)));
    }
    return numbers;
  }

  private void laws() {
    Map<String, Double> laws = new LinkedHashMap<>();
    laws.put("gas constant J/(mol·K)", Units.GAS_CONSTANT);
    laws.put("0 °C in K", Units.ZERO_CELSIUS_K);
    laws.put("mm in an inch", Units.INCH_MM);
    entries.put(
        "laws of nature and definitions", new Entry("laws of nature and definitions", laws, LAW));
  }
}
