package annulus.select;

import java.util.AbstractList;
import java.util.List;

/**
 * What the rules say of one class, sorted by id; the findings are made when somebody first looks at
 * them.
 */
final class Spoken extends AbstractList<Finding> {
  private final RuleBook.OnJoint open;
  private final Bits rules;
  private final Facts ofClass;
  private final String classId;
  private volatile List<Finding> made;

  /**
   * @param open the rules that the joint leaves open
   * @param rules places of the rules that spoke
   * @param ofClass facts of the joint and of the class
   */
  Spoken(RuleBook.OnJoint open, Bits rules, Facts ofClass, String classId) {
    this.open = open;
    this.rules = rules;
    this.ofClass = ofClass;
    this.classId = classId;
  }

  boolean has(Rule.Verdict verdict) {
    return rules.holdsAny(open.with(verdict));
  }

  int count(Rule.Verdict verdict) {
    return rules.common(open.with(verdict));
  }

  private List<Finding> made() {
    List<Finding> known = made;
    if (known == null) {
      known = found(rules);
      made = known;
    }
    return known;
  }

  /** The findings of one verdict, without making the others. */
  List<Finding> of(Rule.Verdict verdict) {
    Bits with = rules.copy();
    with.keepOnly(open.with(verdict));
    return found(with);
  }

  private List<Finding> found(Bits places) {
    Finding[] found = new Finding[places.count()];
    int place = -1;
    for (int i = 0; i < found.length; i++) {
      place = places.next(place + 1);
      Rule rule = open.at(place);
      found[i] = rule.ofJoint() ? open.ofJoint(place) : Finding.of(rule, ofClass, classId);
    }
    return List.of(found);
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
