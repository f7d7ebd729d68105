package annulus.exchange;

import annulus.advice.FitExplanation;
import annulus.advice.FitExplanation.Zone;
import annulus.advice.Knowledge;
import annulus.advice.MeasureLimits;
import annulus.catalog.Instrument;
import annulus.catalog.Material;
import annulus.catalog.Provenance;
import annulus.fit.BearingRing;
import annulus.fit.iso286.Designation;
import annulus.fit.iso286.Iso286Tables;
import annulus.fit.iso286.Member;
import annulus.fit.iso286.ToleranceClass;
import annulus.measure.MeasuredDiameter;
import annulus.measure.Reading;
import annulus.measure.Side;
import annulus.quantity.InvalidValue;
import annulus.quantity.Numbers;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Turns designations and readings from a command line into a {@link FitExplanation}. */
public final class FitWords {
  /** Instrument that is taken where none is named. */
  public static final String INSTRUMENT = "caliper-150";

  /** Material that is taken where none is named. */
  public static final String MATERIAL = "steel-plain";

  private static final String FILE = "command line";
  private static final Pattern BEARING =
      Pattern.compile("bearing (bore|outside) ([0-9]+(?:\\.[0-9]+)?)");

  private final Knowledge knowledge;
  private final Iso286Tables tables;
  private Problems problems = new Problems();

  /**
   * @param knowledge instruments, materials and policy
   * @param files where the tolerance tables are read from
   * @throws IOException when a table can't be read
   */
  public FitWords(Knowledge knowledge, DataFiles files) throws IOException {
    this.knowledge = knowledge;
    this.tables = Iso286Files.read(files);
  }

  /**
   * A temperature when measured, °C.
   *
   * @param option its name, for messages
   * @param text such as {@code 21.5} or {@code 70 F}
   * @throws InputRefused when it is none, or none that anybody measures at
   */
  public static double celsius(String option, String text) {
    Problems problems = new Problems();
    Node node = new Node.Text(new Node.Place(FILE, 0, 0), text.strip());
    OptionalDouble celsius = new Measures(problems).celsius(node, option, -30, 60);
    problems.throwIfAny();
    return celsius.orElseThrow();
  }

  /**
   * A measured size.
   *
   * @param side bore or part
   * @param readings as written, apart by spaces
   * @param instrument id of the instrument
   * @param material id of the material
   * @param celsius temperature when measured, °C
   */
  public record Measured(
      Side side, String readings, String instrument, String material, double celsius) {}

  /**
   * Explains designations and judges sizes.
   *
   * @param words one or two designations, such as {@code 35 H7} and {@code 35 k6}, or one fit
   *     {@code 40 H7/s6}, or {@code bearing outside 62}
   * @param measured sizes to judge; may be empty
   * @throws InputRefused with every problem
   */
  public FitExplanation explain(List<String> words, List<Measured> measured) {
    problems = new Problems();
    List<Zone> zones = new ArrayList<>();
    for (int i = 0; i < words.size(); i++) {
      zones.addAll(zones(words.get(i), i + 2));
    }
    problems.throwIfAny();
    checkPair(zones);
    measured.forEach(m -> checkSide(m.side(), zones));
    List<MeasuredDiameter> sizes = new ArrayList<>();
    measured.forEach(m -> size(m).ifPresent(sizes::add));
    problems.throwIfAny();
    return FitExplanation.of(
        ordered(zones), sizes, knowledge.catalog().policy().value("wanted-confidence"));
  }

  private static List<Zone> ordered(List<Zone> zones) {
    List<Zone> sorted = new ArrayList<>(zones);
    sorted.sort((a, b) -> a.side().compareTo(b.side()));
    return sorted;
  }

  private void checkPair(List<Zone> zones) {
    boolean pair = zones.size() == 2 && zones.get(0).side() != zones.get(1).side();
    if (zones.size() != 1 && !pair) {
      problems.add(
          new Node.Place(FILE, 0, 2),
          "fit",
          zones.size() + " tolerance zones, not one hole and one shaft",
          "\"35 H7\", or \"35 H7\" \"35 k6\", or \"35 H7/k6\"");
    } else if (pair && zones.get(0).limits().nominalMm() != zones.get(1).limits().nominalMm()) {
      problems.add(
          new Node.Place(FILE, 0, 3),
          "fit",
          Numbers.plain(zones.get(0).limits().nominalMm())
              + " and "
              + Numbers.plain(zones.get(1).limits().nominalMm())
              + " mm do not belong together",
          "the same nominal diameter");
    }
    problems.throwIfAny();
  }

  /** A size beside nothing that it could be judged against would be passed over in silence. */
  private void checkSide(Side side, List<Zone> zones) {
    if (zones.stream().noneMatch(z -> z.side() == side)) {
      boolean bore = side == Side.BORE;
      problems.add(
          new Node.Place(FILE, 0, 0),
          bore ? "--bore" : "--part",
          "a "
              + (bore ? "bore" : "part")
              + " was measured, but no "
              + (bore ? "hole" : "shaft")
              + " is given to judge it by",
          bore ? "\"35 H7\" beside it, or --part" : "\"35 k6\" beside it, or --bore");
    }
  }

  private List<Zone> zones(String word, int position) {
    Node.Place place = new Node.Place(FILE, 0, position);
    List<Zone> zones = problems.place(place, "", () -> read(word.strip()));
    return zones == null ? List.of() : zones;
  }

  private List<Zone> read(String word) {
    Matcher bearing = BEARING.matcher(word);
    if (bearing.matches()) {
      return List.of(bearing(bearing.group(1), Double.parseDouble(bearing.group(2)), word));
    }
    Designation designation = Designation.parse(word);
    double nominal = designation.nominalMm();
    if (designation instanceof Designation.OfFit fit) {
      return List.of(zone(nominal, fit.hole()), zone(nominal, fit.shaft()));
    }
    if (designation instanceof Designation.OfClass one) {
      return List.of(zone(nominal, one.toleranceClass()));
    }
    throw new InvalidValue(
        "fit",
        "\"" + word + "\" does not say whether it is hole or shaft",
        "a class such as H7 or k6");
  }

  private Zone bearing(String ring, double mm, String word) {
    boolean bore = ring.equals("bore");
    BearingRing which = bore ? BearingRing.BORE : BearingRing.OUTSIDE;
    Provenance basis = knowledge.bearings().row(which, mm).provenance();
    return new Zone(
        word, bore ? Side.BORE : Side.PART, knowledge.bearings().limits(which, mm), basis);
  }

  private Zone zone(double nominal, ToleranceClass wanted) {
    return new Zone(
        Numbers.plain(nominal) + " " + wanted,
        wanted.member() == Member.HOLE ? Side.BORE : Side.PART,
        tables.limits(nominal, wanted),
        tables.basis(nominal, wanted));
  }

  private Optional<MeasuredDiameter> size(Measured m) {
    Node.Place place = new Node.Place(FILE, 0, 0);
    String field = m.side() == Side.BORE ? "--bore" : "--part";
    Instrument instrument =
        known(place, "--instrument", m.instrument(), knowledge.catalog().instruments());
    Material material = known(place, "--materials", m.material(), knowledge.catalog().materials());
    List<Reading> readings = new ArrayList<>();
    Measures measures = new Measures(problems);
    for (Node node : FlatOrder.readings(new Node.Text(place, m.readings())).elements()) {
      measures.lengthMm(node, field, 0.5, 500).ifPresent(mm -> readings.add(Reading.of(mm)));
    }
    if (instrument == null || material == null || readings.isEmpty()) {
      return Optional.empty();
    }
    return Optional.ofNullable(
        problems.place(
            place,
            field,
            () ->
                MeasuredDiameter.of(
                    m.side(),
                    readings,
                    instrument,
                    m.celsius(),
                    knowledge.catalog().policy().value("bore-temperature-plus-minus-c"),
                    material.expansion(),
                    MeasureLimits.of(knowledge.catalog().policy()))));
  }

  private <T> T known(Node.Place place, String field, String id, Map<String, T> map) {
    T value = map.get(id);
    if (value == null) {
      problems.add(
          place, field, Fields.quoted(id) + " is unknown", Nearest.allowed(id, map.keySet()));
    }
    return value;
  }
}
