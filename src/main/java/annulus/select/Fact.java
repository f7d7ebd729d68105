package annulus.select;

import static annulus.select.Fact.Kind.FLAG;
import static annulus.select.Fact.Kind.NUMBER;
import static annulus.select.Fact.Kind.WORD;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** What a rule may look at. Facts of a class begin with {@code class.}. */
public enum Fact {
  GAP_LIKELY("gap.likelyUm", NUMBER, "µm radial", "largest centred gap, best estimate"),
  GAP_LARGEST("gap.largestUm", NUMBER, "µm radial", "largest centred gap, upper limit"),
  GAP_SMALLEST("gap.smallestUm", NUMBER, "µm radial", "smallest centred gap, lower limit"),
  GAP_ONE_SIDED(
      "gap.oneSidedUm", NUMBER, "µm between faces", "whole clearance with the part on one side"),
  GAP_GROWTH("gap.growthUm", NUMBER, "µm radial", "most the gap opens over the service range"),
  GAP_LOOSEST_AT("gap.loosestAtC", NUMBER, "°C", "temperature in service at which it is widest"),
  GAP_LOOSEST("gap.loosestUm", NUMBER, "µm radial", "mean gap at its widest at an end of service"),
  GAP_TIGHTEST(
      "gap.tightestUm", NUMBER, "µm radial", "mean gap at its tightest, closing or in service"),
  GAP_TIGHTEST_AT("gap.tightestAtC", NUMBER, "°C", "temperature at which it is tightest"),
  GAP_PRESSES("gap.pressesWhen", WORD, "", "when the parts may press on each other, if at all"),
  PRESS("press.standing", WORD, "", "how the tightest contact pressure stands to the limits"),
  PRESS_AT("press.atC", NUMBER, "°C", "temperature at which the contact pressure stands so"),
  FIT("fit", WORD, "", "clear, line-to-line or interference, by the best estimate"),
  OVALITY("form.ovalityUm", NUMBER, "µm radial", "larger ovality of the two members"),
  TAPER("form.taperUm", NUMBER, "µm radial", "larger taper of the two members"),
  TWO_POINT("form.twoPoint", FLAG, "", "bore measured with two contacts"),
  THREE_POINT("form.threePoint", FLAG, "", "bore measured with three contacts"),
  ONE_READING("form.oneReading", FLAG, "", "a member was measured with a single reading"),
  ONE_READING_WHICH("form.oneReadingWhich", WORD, "", "what was measured with a single reading"),
  BORE_KIND("bore.kind", WORD, "", "kind of the bore's material"),
  PART_KIND("part.kind", WORD, "", "kind of the part's material"),
  BORE_ACTIVITY("bore.activity", WORD, "", "activity of the bore's face before primer"),
  PART_ACTIVITY("part.activity", WORD, "", "activity of the part's face before primer"),
  BORE_FILM("bore.film", WORD, "", "layer on the bore's face"),
  PART_FILM("part.film", WORD, "", "layer on the part's face"),
  BORE_ATTACK("bore.attack", WORD, "", "what uncured compound does to the bore"),
  PART_ATTACK("part.attack", WORD, "", "what uncured compound does to the part"),
  BORE_STATE("bore.state", WORD, "", "state of the bore's face as it came"),
  PART_STATE("part.state", WORD, "", "state of the part's face as it came"),
  INERT_FACES("faces.inert", NUMBER, "faces", "inert faces before primer"),
  UNPRIMED_INERT("faces.inertUnprimed", NUMBER, "faces", "inert faces left after primer"),
  UNPRIMED_INERT_WHICH("faces.inertWhich", WORD, "", "which inert face is left after primer"),
  SLOW_FACES("faces.slow", NUMBER, "faces", "slow faces before primer"),
  PRIMED_FACES("faces.primed", NUMBER, "faces", "faces with a live primer"),
  FINISH_SAID("faces.finishSaid", FLAG, "", "the finish of both members was said"),
  PRIMER_AGE("primer.ageShare", NUMBER, "", "age of the primer over its shortest on-part life"),
  PRIMER_WET("primer.wet", FLAG, "", "primer put on less than its flash-off ago"),
  COLDEST_CURE("cure.coldestC", NUMBER, "°C", "coldest the joint may be while it cures"),
  WARMEST_CURE("cure.warmestC", NUMBER, "°C", "warmest that the joint surely gets"),
  PART_COLDER("cure.partColderK", NUMBER, "K", "how much colder than the room a member comes in"),
  PART_COLDER_WHICH("cure.colderWhich", WORD, "", "which member comes in colder than the room"),
  SERVICE_LOW("service.lowC", NUMBER, "°C", "lowest service temperature"),
  SERVICE_HIGH("service.highC", NUMBER, "°C", "highest service temperature"),
  COMES_APART("comesApartLater", FLAG, "", "the joint must come apart later"),
  CONSEQUENCE("consequence", WORD, "", "what a failure would do"),
  ENGAGEMENT_RATIO("engagement.ratio", NUMBER, "", "engagement over diameter"),
  SEAL_NEAR("near.seal", FLAG, "", "a seal or open bearing near the film"),
  ELECTRONICS_NEAR("near.electronics", FLAG, "", "battery or electronics near the joint"),
  WARRANTY("warranty", FLAG, "", "a warranty claim may still be open"),
  LOAD_GIVEN("load.given", FLAG, "", "a load was given"),
  WANTED_CONFIDENCE("wanted.confidence", NUMBER, "", "probability wanted"),
  CLASS_GAP_LOW("class.gapLowUm", NUMBER, "µm radial", "smallest gap of the class"),
  CLASS_GAP_HIGH("class.gapHighUm", NUMBER, "µm radial", "largest gap of the class as primed"),
  CLASS_COVERS("class.covers", NUMBER, "", "probability that the gap lies in the class's range"),
  CLASS_SERVICE_LOW("class.serviceLowC", NUMBER, "°C", "lowest service temperature"),
  CLASS_SERVICE_HIGH("class.serviceHighC", NUMBER, "°C", "highest service temperature"),
  CLASS_MINIMUM("class.minimumC", NUMBER, "°C", "no cure below this"),
  CLASS_CAUTION("class.cautionBelowC", NUMBER, "°C", "slow and uncertain below this"),
  CLASS_HOT_FRACTION("class.hotFraction", NUMBER, "", "strength left at the highest service"),
  CLASS_PERMANENCE("class.permanence", WORD, "", "releasable or lasting"),
  CLASS_ROLE("class.role", WORD, "", "film, retain or rebuild");

  /** What kind of value a fact has. */
  public enum Kind {
    NUMBER,
    WORD,
    FLAG
  }

  private static final Map<String, Fact> BY_ID = byId();

  private final String id;
  private final Kind kind;
  private final String unit;
  private final String meaning;
  private final boolean ofClass;

  Fact(String id, Kind kind, String unit, String meaning) {
    this.id = id;
    this.kind = kind;
    this.unit = unit;
    this.meaning = meaning;
    this.ofClass = id.startsWith("class.");
  }

  private static Map<String, Fact> byId() {
    Map<String, Fact> byId = new HashMap<>();
    for (Fact fact : values()) {
      byId.put(fact.id, fact);
    }
    return byId;
  }

  /** The name used in rules. */
  public String id() {
    return id;
  }

  public Kind kind() {
    return kind;
  }

  public String unit() {
    return unit;
  }

  public String meaning() {
    return meaning;
  }

  /** Whether it belongs to a class rather than to the joint. */
  public boolean ofClass() {
    return ofClass;
  }

  /** The fact with this name. */
  public static Optional<Fact> named(String id) {
    return Optional.ofNullable(BY_ID.get(id));
  }
}
