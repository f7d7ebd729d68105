package annulus.select;

import java.util.AbstractList;
import java.util.List;

/**
 * What the rules say of one class, sorted by id; the findings are made when somebody first looks at
 * them.
 */
final class Spoken extends AbstractList<Finding> {
  private final RuleBook book;
  private final Bits rules;
  private final Facts joint;
  private final Facts ofClass;
  private final String classId;
  private volatile List<Finding> made;

  /**
   * @param rules places of the rules that spoke
   * @param ofClass facts of the joint and of the class
   */
  Spoken(RuleBook book, Bits rules, Facts joint, Facts ofClass, String classId) {
    this.book = book;
    this.rules = rules;
    this.joint = joint;
    this.ofClass = ofClass;
    this.classId = classId;
  }

  boolean has(Rule.Verdict verdict) {
    return rules.holdsAny(book.with(verdict));
  }

  int count(Rule.Verdict verdict) {
    return rules.common(book.with(verdict));
  }

  private List<Finding> made() {
    List<Finding> known = made;
    if (known == null) {
      Finding[] all = new Finding[size()];
      int place = -1;
      for (int i = 0; i < all.length; i++) {
        place = rules.next(place + 1);
        Rule rule = book.at(place);
        all[i] = Finding.of(rule, rule.ofJoint() ? joint : ofClass, classId);
      }
      known = List.of(all);
      made = known;
    }
    return known;
  }

  @Override
  public Finding get(int index) {
    return made().get(index);
  }

  @Override
  public int size() {
    return rules.count();
  }
}
