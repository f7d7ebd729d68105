package annulus.fit.iso286;

import annulus.quantity.Check;
import annulus.quantity.InvalidValue;
import annulus.quantity.Numbers;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads designations. */
final class DesignationText {
  private static final String CLASS = "[A-Za-z]{1,2}[0-9]{1,2}";
  private static final String DEVIATION = "[+\u2212-]?\\s*[0-9]+(?:\\.[0-9]+)?";

  /** Optional diameter sign (o-slash, capital o-slash, diameter, empty set), size, tolerance. */
  private static final Pattern FORM =
      Pattern.compile(
          "[\u00f8\u00d8\u2300\u2205]?\\s*(?<size>[0-9]+(?:\\.[0-9]+)?)\\s*(?:(?<one>CLASS)"
                  .replace("CLASS", CLASS)
              + "(?:\\s*/\\s*(?<two>CLASS))?|".replace("CLASS", CLASS)
              + "\\(\\s*(?<first>DEV)\\s*/\\s*(?<second>DEV)\\s*\\))".replace("DEV", DEVIATION));

  private DesignationText() {}

  static Designation parse(String text) {
    Matcher form = FORM.matcher(text == null ? "" : text.strip());
    if (!form.matches()) {
      throw notRead(text);
    }
    double nominal = nominal(form.group("size"));
    if (form.group("first") != null) {
      return written(nominal, form.group("first"), form.group("second"));
    }
    ToleranceClass one = ToleranceClass.parse(form.group("one"));
    return form.group("two") == null
        ? new Designation.OfClass(nominal, one)
        : new Designation.OfFit(nominal, one, ToleranceClass.parse(form.group("two")));
  }

  static void requireOrder(double lowerUm, double upperUm) {
    Check.finite("lower", lowerUm, "µm");
    Check.finite("upper", upperUm, "µm");
    if (lowerUm > upperUm) {
      throw new InvalidValue(
          "deviation",
          "lower "
              + Numbers.plain(lowerUm)
              + " µm is above upper "
              + Numbers.plain(upperUm)
              + " µm",
          "lower at most upper");
    }
  }

  private static double nominal(String text) {
    double nominal = Check.positive("nominal", Double.parseDouble(text), "mm");
    return Check.within("nominal", nominal, 0, SizeBand.LARGEST_MM, "mm");
  }

  private static Designation written(double nominalMm, String first, String second) {
    double a = micrometres(first);
    double b = micrometres(second);
    return new Designation.Written(nominalMm, Math.min(a, b), Math.max(a, b));
  }

  private static double micrometres(String millimetres) {
    String ascii = millimetres.replace('\u2212', '-').replaceAll("\\s", "");
    double mm = Check.within("deviation", Double.parseDouble(ascii), -1, 1, "mm");
    return Microns.clean(mm * 1000);
  }

  private static InvalidValue notRead(String text) {
    boolean comma = text != null && text.contains(",");
    return new InvalidValue(
        "designation",
        "\"" + text + "\" can't be read" + (comma ? " (write a decimal point, not a comma)" : ""),
        "such as 35 H7, 25 k6, 40 H7/s6 or 42 (+0.010/-0.005), sizes in mm");
  }
}
