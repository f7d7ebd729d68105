package annulus.fit.iso286;

import annulus.quantity.InvalidValue;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Letter and grade of a tolerance, such as {@code H7} or {@code k6}.
 *
 * @param member hole for capital letters, shaft for small ones
 * @param letters the letters as the standard writes them
 * @param grade the grade
 */
public record ToleranceClass(Member member, String letters, ToleranceGrade grade) {
  private static final Pattern FORM = Pattern.compile("([A-Z]{1,2}|[a-z]{1,2})([0-9]{1,2})");

  public ToleranceClass {
    Letters.require(member, letters);
  }

  /**
   * Reads {@code H7}, {@code js6}, {@code ZC10}.
   *
   * @throws InvalidValue naming what is allowed
   */
  public static ToleranceClass parse(String text) {
    Matcher form = FORM.matcher(text);
    if (!form.matches()) {
      throw new InvalidValue(
          "tolerance",
          "\"" + text + "\" is no tolerance class",
          "letter and grade, such as H7 for a hole or k6 for a shaft");
    }
    Member member = Character.isUpperCase(text.charAt(0)) ? Member.HOLE : Member.SHAFT;
    ToleranceGrade grade = ToleranceGrade.numbered("tolerance", form.group(2));
    return new ToleranceClass(member, form.group(1), grade);
  }

  @Override
  public String toString() {
    return letters + grade.number();
  }
}
