package annulus.fit.iso286;

import annulus.quantity.InvalidValue;
import java.util.List;
import java.util.Locale;

/** The letters of ISO 286-1, in the order of the standard (i, l, o, q, w are not used). */
final class Letters {
  static final List<String> SHAFT =
      List.of("a b c cd d e ef f fg g h j js k m n p r s t u v x y z za zb zc".split(" "));
  static final List<String> HOLE = SHAFT.stream().map(l -> l.toUpperCase(Locale.ROOT)).toList();

  private Letters() {}

  static void require(Member member, String letters) {
    List<String> known = member == Member.HOLE ? HOLE : SHAFT;
    if (!known.contains(letters)) {
      throw new InvalidValue(
          "letter",
          "\"" + letters + "\" is no tolerance letter of a " + word(member),
          String.join(" ", known));
    }
  }

  /** Shafts a to h, holes A to H: the zone lies on the clearance side of the nominal size. */
  static boolean onClearanceSide(String letters) {
    return SHAFT.indexOf(letters.toLowerCase(Locale.ROOT)) <= SHAFT.indexOf("h");
  }

  static boolean isSymmetric(String letters) {
    return letters.equals("js") || letters.equals("JS");
  }

  static String shaftOf(String holeLetters) {
    return holeLetters.toLowerCase(Locale.ROOT);
  }

  /** Holes P to ZC, which take the step between grades to IT7. */
  static boolean fromP(String holeLetters) {
    return HOLE.indexOf(holeLetters) >= HOLE.indexOf("P");
  }

  static String word(Member member) {
    return member == Member.HOLE ? "hole" : "shaft";
  }
}
