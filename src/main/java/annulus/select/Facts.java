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

  private static final Side NO_JOINT = Side.empty(OF_JOINT);
  private static final Side NO_CLASS = Side.empty(Fact.values().length - OF_JOINT);

  private final Side joint;
  private final Side ofClass;

  private Facts(Side joint, Side ofClass) {
    this.joint = joint;
    this.ofClass = ofClass;
  }

  /** The facts of a joint or those of a class, by place: NaN and null where there is no value. */
  private static final class Side {
    private final double[] numbers;
    private final Object[] words;

    Side(double[] numbers, Object[] words) {
      this.numbers = numbers;
      this.words = words;
    }

    static Side empty(int size) {
      double[] numbers = new double[size];
      Arrays.fill(numbers, Double.NaN);
      return new Side(numbers, new Object[size]);
    }

    Side copy() {
      return new Side(numbers.clone(), words.clone());
    }

    Side with(Side other) {
      Side all = copy();
      for (int i = 0; i < numbers.length; i++) {
        all.numbers[i] = Double.isNaN(other.numbers[i]) ? numbers[i] : other.numbers[i];
        all.words[i] = other.words[i] == null ? words[i] : other.words[i];
      }
      return all;
    }
  }

  /** The place of a fact on its side; those of a class come last of all. */
  private static int place(Fact fact) {
    return fact.ofClass() ? fact.ordinal() - OF_JOINT : fact.ordinal();
  }

  /** Starts a set of facts. */
  public static Builder builder() {
    return new Builder(NO_JOINT, NO_CLASS);
  }

  /** Starts a set of facts with these; what is set wins. */
  public Builder and() {
    return new Builder(joint, ofClass);
  }

  /** These facts and the other's; the other's win. */
  public Facts with(Facts other) {
    return new Facts(joint.with(other.joint), ofClass.with(other.ofClass));
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

  /** Collects values and checks their kind; a side is copied when it is first written to. */
  public static final class Builder {
    private Side joint;
    private Side ofClass;
    private boolean ownJoint;
    private boolean ownClass;

    private Builder(Side joint, Side ofClass) {
      this.joint = joint;
      this.ofClass = ofClass;
    }

    private Side own(Fact fact) {
      if (fact.ofClass()) {
        return ownClass ? ofClass : ownedClass();
      }
      return ownJoint ? joint : ownedJoint();
    }

    private Side ownedClass() {
      ofClass = ofClass.copy();
      ownClass = true;
      return ofClass;
    }

    private Side ownedJoint() {
      joint = joint.copy();
      ownJoint = true;
      return joint;
    }

    /** Sets a number. */
    public Builder number(Fact fact, double value) {
      check(fact, Fact.Kind.NUMBER);
      own(fact).numbers[place(fact)] = value;
      return this;
    }

    /** Sets a flag. */
    public Builder flag(Fact fact, boolean value) {
      check(fact, Fact.Kind.FLAG);
      own(fact).words[place(fact)] = value;
      return this;
    }

    /** Sets a word from an enum; rules name it in lower case with dashes. */
    public Builder word(Fact fact, Enum<?> value) {
      check(fact, Fact.Kind.WORD);
      own(fact).words[place(fact)] = value;
      return this;
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
