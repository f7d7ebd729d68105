package annulus.select;

import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;

/**
 * Values of facts: numbers, words or flags. A fact without a value makes every test false. Facts of
 * a class stand apart from those of the joint, so that what is said of nine classes in one joint
 * shares what is said of the joint.
 */
public final class Facts {
  /** How many facts are of the joint; those of a class stand behind them in {@link Fact}. */
  private static final int OF_JOINT = Fact.CLASS_GAP_LOW.ordinal();

  private static final int OF_CLASS = Fact.values().length - OF_JOINT;

  private static final Facts NONE = new Facts(Part.none(OF_JOINT), Part.none(OF_CLASS));

  private final Part joint;
  private final Part ofClass;

  private Facts(Part joint, Part ofClass) {
    this.joint = joint;
    this.ofClass = ofClass;
  }

  /**
   * The facts of a joint or those of a class, by place: NaN and null where there is no value. Sets
   * of facts share them; nobody writes to one that is shared.
   */
  private static final class Part {
    private final double[] numbers;
    private final Object[] words;

    Part(double[] numbers, Object[] words) {
      this.numbers = numbers;
      this.words = words;
    }

    static Part none(int size) {
      double[] none = new double[size];
      Arrays.fill(none, Double.NaN);
      return new Part(none, new Object[size]);
    }

    Part copy() {
      return new Part(numbers.clone(), words.clone());
    }

    Part with(Part other) {
      Part both = copy();
      for (int i = 0; i < numbers.length; i++) {
        both.numbers[i] = Double.isNaN(other.numbers[i]) ? numbers[i] : other.numbers[i];
        both.words[i] = other.words[i] == null ? words[i] : other.words[i];
      }
      return both;
    }
  }

  /** Starts a set of facts. */
  public static Builder builder() {
    return new Builder(NONE);
  }

  /** Starts a set of facts with these; what is set wins. */
  public Builder and() {
    return new Builder(this);
  }

  /** These facts and the other's; the other's win. */
  public Facts with(Facts other) {
    return new Facts(joint.with(other.joint), ofClass.with(other.ofClass));
  }

  /** The facts of the joint from these, those of the class from the other. */
  public Facts about(Facts other) {
    return new Facts(joint, other.ofClass);
  }

  /** The number of a fact; NaN without a value. */
  double number(Fact fact) {
    int at = fact.ordinal(); // asked very often
    return at < OF_JOINT ? joint.numbers[at] : ofClass.numbers[at - OF_JOINT];
  }

  /** The word of a fact as its enum has it, or a flag; null without a value. */
  Object word(Fact fact) {
    int at = fact.ordinal();
    return at < OF_JOINT ? joint.words[at] : ofClass.words[at - OF_JOINT];
  }

  /** The value of a fact, or null. */
  Object value(Fact fact) {
    if (fact.kind() == Fact.Kind.NUMBER) {
      double number = number(fact);
      return Double.isNaN(number) ? null : (Object) number;
    }
    return word(fact) instanceof Enum<?> constant ? word(constant.name()) : word(fact);
  }

  /** How rules and answers name a constant of an enum. */
  static String word(String name) {
    return name.toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** All values. */
  public Map<Fact, Object> all() {
    Map<Fact, Object> all = new EnumMap<>(Fact.class);
    for (Fact fact : Fact.values()) {
      Object value = value(fact);
      if (value != null) {
        all.put(fact, value);
      }
    }
    return Collections.unmodifiableMap(all);
  }

  /** Collects values and checks their kind; what is shared is copied when it is first written. */
  public static final class Builder {
    private Part joint;
    private Part ofClass;
    private boolean ownJoint;
    private boolean ownClass;

    private Builder(Facts facts) {
      joint = facts.joint;
      ofClass = facts.ofClass;
    }

    /** Sets a number. */
    public Builder number(Fact fact, double value) {
      check(fact, Fact.Kind.NUMBER);
      int at = fact.ordinal();
      if (at < OF_JOINT) {
        joint().numbers[at] = value;
      } else {
        ofClass().numbers[at - OF_JOINT] = value;
      }
      return this;
    }

    /** Sets a flag. */
    public Builder flag(Fact fact, boolean value) {
      check(fact, Fact.Kind.FLAG);
      return set(fact, value);
    }

    /** Sets a word from an enum; rules name it in lower case with dashes. */
    public Builder word(Fact fact, Enum<?> value) {
      check(fact, Fact.Kind.WORD);
      return set(fact, value);
    }

    private Builder set(Fact fact, Object value) {
      int at = fact.ordinal();
      if (at < OF_JOINT) {
        joint().words[at] = value;
      } else {
        ofClass().words[at - OF_JOINT] = value;
      }
      return this;
    }

    private Part joint() {
      joint = ownJoint ? joint : joint.copy();
      ownJoint = true;
      return joint;
    }

    private Part ofClass() {
      ofClass = ownClass ? ofClass : ofClass.copy();
      ownClass = true;
      return ofClass;
    }

    private static void check(Fact fact, Fact.Kind kind) {
      if (fact.kind() != kind) {
        throw wrongKind(fact);
      }
    }

    private static IllegalArgumentException wrongKind(Fact fact) {
      return new IllegalArgumentException(fact + " is a " + fact.kind());
    }

    /** The facts so far; what is set afterwards does not change them. */
    public Facts build() {
      ownJoint = false;
      ownClass = false;
      return new Facts(joint, ofClass);
    }
  }
}
