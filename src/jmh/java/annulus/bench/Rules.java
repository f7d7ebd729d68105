package annulus.bench;

import annulus.select.Finding;
import annulus.select.Rule;
import annulus.select.RuleBook;
import java.util.Collection;
import java.util.List;

/** One bit for each rule. */
final class Rules {
  private Rules() {}

  static final long FACE_TO_FACE_LIMIT = 1L << 0;
  static final long GAP_TOO_WIDE = 1L << 1;
  static final long GAP_TOO_NARROW = 1L << 2;
  static final long GAP_NOT_SURE = 1L << 3;
  static final long DRY_PRESS = 1L << 4;
  static final long LINE_TO_LINE_FILM = 1L << 5;
  static final long TWO_INERT_FACES = 1L << 6;
  static final long ONE_INERT_FACE_COLD = 1L << 7;
  static final long ONE_INERT_FACE = 1L << 8;
  static final long INERT_BESIDE_SLOW = 1L << 9;
  static final long SLOW_PAIR_COLD = 1L << 10;
  static final long SLOW_PAIR = 1L << 11;
  static final long WIDE_SLOW = 1L << 12;
  static final long REBUILD_NEEDS_PRIMER = 1L << 13;
  static final long TOO_COLD = 1L << 14;
  static final long COLD = 1L << 15;
  static final long SERVICE_TOO_HOT = 1L << 16;
  static final long SERVICE_TOO_COLD = 1L << 17;
  static final long WEAK_WHEN_HOT = 1L << 18;
  static final long HOT_CLASS = 1L << 19;
  static final long STRESS_CRACKING_BORE = 1L << 20;
  static final long STRESS_CRACKING_PART = 1L << 21;
  static final long TEST_PLASTIC_FIRST = 1L << 22;
  static final long LAMINATE_MEMBER = 1L << 23;
  static final long LAMINATE_BOND = 1L << 24;
  static final long PLASTIC_MEMBER = 1L << 25;
  static final long COATED_BORE = 1L << 26;
  static final long COATED_PART = 1L << 27;
  static final long PLATED_FACE = 1L << 28;
  static final long CONVERSION_FACE = 1L << 29;
  static final long GREASY_FACE = 1L << 30;
  static final long OLD_COMPOUND = 1L << 31;
  static final long SEAL_NEAR = 1L << 32;
  static final long ELECTRONICS_NEAR = 1L << 33;
  static final long APART_FRAGILE = 1L << 34;
  static final long APART_LASTING = 1L << 35;
  static final long APART_RELEASABLE = 1L << 36;
  static final long INJURY_WITHOUT_LOAD = 1L << 37;
  static final long SHORT_ENGAGEMENT = 1L << 38;
  static final long OVAL_RULE = 1L << 39;
  static final long BADLY_OVAL = 1L << 40;
  static final long TAPERED_RULE = 1L << 41;
  static final long TWO_POINT_BLIND = 1L << 42;
  static final long OFF_CENTRE = 1L << 43;
  static final long OPENS_IN_SERVICE = 1L << 44;
  static final long PRIMER_TOO_OLD = 1L << 45;
  static final long PRIMER_AGEING = 1L << 46;
  static final long PRIMER_WET = 1L << 47;
  static final long PRIMER_GRABS = 1L << 48;
  static final long PART_COLDER = 1L << 49;
  static final long WARRANTY = 1L << 50;
  static final long PRESS_FILM_HURTS = 1L << 51;
  static final long ONE_READING = 1L << 52;
  static final long THREE_POINT_BLIND = 1L << 53;
  static final long MAYBE_SWAPPED = 1L << 54;
  static final long PRESS_TOO_HIGH = 1L << 55;
  static final long PRESS_MAY_EXCEED = 1L << 56;
  static final long PRESS_LIMIT_UNKNOWN = 1L << 57;
  static final long PRESS_NOT_COMPUTED = 1L << 58;
  static final long PRESS_NO_FIGURE = 1L << 59;
  static final long PRESS_GOES_LOOSE = 1L << 60;
  static final long PRESS_BEARING_CLEARANCE = 1L << 61;
  static final long FINISH_NOT_SAID = 1L << 62;
  static final long CLOSES_UP = 1L << 63;

  private static final List<String> IDS =
      List.of(
          "face-to-face-limit",
          "gap-too-wide",
          "gap-too-narrow",
          "gap-not-sure",
          "dry-press",
          "line-to-line-film",
          "two-inert-faces",
          "one-inert-face-cold",
          "one-inert-face",
          "inert-beside-slow",
          "slow-pair-cold",
          "slow-pair",
          "wide-slow",
          "rebuild-needs-primer",
          "too-cold",
          "cold",
          "service-too-hot",
          "service-too-cold",
          "weak-when-hot",
          "hot-class",
          "stress-cracking-bore",
          "stress-cracking-part",
          "test-plastic-first",
          "laminate-member",
          "laminate-bond",
          "plastic-member",
          "coated-bore",
          "coated-part",
          "plated-face",
          "conversion-face",
          "greasy-face",
          "old-compound",
          "seal-near",
          "electronics-near",
          "apart-fragile",
          "apart-lasting",
          "apart-releasable",
          "injury-without-load",
          "short-engagement",
          "oval",
          "badly-oval",
          "tapered",
          "two-point-blind",
          "off-centre",
          "opens-in-service",
          "primer-too-old",
          "primer-ageing",
          "primer-wet",
          "primer-grabs",
          "part-colder",
          "warranty",
          "press-film-hurts",
          "one-reading",
          "three-point-blind",
          "maybe-swapped",
          "press-too-high",
          "press-may-exceed",
          "press-limit-unknown",
          "press-not-computed",
          "press-no-figure",
          "press-goes-loose",
          "press-bearing-clearance",
          "finish-not-said",
          "closes-up");

  static final long EXCLUDING =
      FACE_TO_FACE_LIMIT
          | GAP_TOO_WIDE
          | GAP_TOO_NARROW
          | GAP_NOT_SURE
          | DRY_PRESS
          | TOO_COLD
          | SERVICE_TOO_HOT
          | SERVICE_TOO_COLD
          | WEAK_WHEN_HOT
          | STRESS_CRACKING_BORE
          | STRESS_CRACKING_PART
          | COATED_BORE
          | COATED_PART
          | APART_FRAGILE
          | PRESS_TOO_HIGH;
  static final long NEEDING_PRIMER =
      TWO_INERT_FACES
          | ONE_INERT_FACE_COLD
          | INERT_BESIDE_SLOW
          | SLOW_PAIR_COLD
          | WIDE_SLOW
          | REBUILD_NEEDS_PRIMER;
  static final long PREFERRING = LINE_TO_LINE_FILM | HOT_CLASS | APART_RELEASABLE;

  /** The bits of what spoke. */
  static long of(Collection<Finding> findings) {
    long bits = 0;
    for (Finding finding : findings) {
      bits |= bit(finding.rule().id());
    }
    return bits;
  }

  /** Holds the bits to the rule book: the same rules with the same verdicts. */
  static void check(RuleBook book) {
    for (Rule rule : book.rules()) {
      long bit = bit(rule.id());
      Rule.Verdict verdict =
          (EXCLUDING & bit) != 0
              ? Rule.Verdict.EXCLUDES
              : (NEEDING_PRIMER & bit) != 0
                  ? Rule.Verdict.NEEDS_PRIMER
                  : (PREFERRING & bit) != 0 ? Rule.Verdict.PREFERS : Rule.Verdict.CAUTION;
      if (rule.verdict() != verdict) {
        throw new IllegalStateException(rule.id() + " is counted as " + verdict);
      }
    }
    if (book.rules().size() != IDS.size()) {
      throw new IllegalStateException(IDS.size() + " rules counted of " + book.rules().size());
    }
  }

  private static long bit(String id) {
    int at = IDS.indexOf(id);
    if (at < 0) {
      throw new IllegalStateException("rule " + id + " is not counted");
    }
    return 1L << at;
  }
}
