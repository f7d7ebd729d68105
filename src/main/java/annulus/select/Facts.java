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

  private static final Facts NONE =
      new Facts(none(OF_JOINT), new Object[OF_JOINT], none(OF_CLASS), new Object[OF_CLASS]);

  /** By place: NaN and null where there is no value. Facts share them; nobody writes to them. */
  private final double[] jointNumbers;

  private final Object[] jointWords;
  private final double[] classNumbers;
  private final Object[] classWords;

  private Facts(
      double[] jointNumbers, Object[] jointWords, double[] classNumbers, Object[] classWords) {
    this.jointNumbers = jointNumbers;
    this.jointWords = jointWords;
    this.classNumbers = classNumbers;
    this.classWords = classWords;
  }

  private static double[] none(int size) {
    double[] none = new double[size];
    Arrays.fill(none, Double.NaN);
    return none;
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
    return new Facts(
        with(jointNumbers, other.jointNumbers),
        with(jointWords, other.jointWords),
        with(classNumbers, other.classNumbers),
        with(classWords, other.classWords));
  }

  /** The facts of the joint from these, those of the class from the other. */
  public Facts about(Facts ofClass) {
    return new Facts(jointNumbers, jointWords, ofClass.classNumbers, ofClass.classWords);
  }

  private static double[] with(double[] these, double[] others) {
    double[] both = these.clone();
    for (int i = 0; i < both.length; i++) {
      both[i] = Double.isNaN(others[i]) ? both[i] : others[i];
    }
    return both;
  }

  private static Object[] with(Object[] these, Object[] others) {
    Object[] both = these.clone();
    for (int i = 0; i < both.length; i++) {
      both[i] = others[i] == null ? both[i] : others[i];
    }
    return both;
  }

  /** The number of a fact; NaN without a value. */
  double number(Fact fact) {
    int at = fact.ordinal(); // asked very often
    return at < OF_JOINT ? jointNumbers[at] : classNumbers[at - OF_JOINT];
  }

  /** The word of a fact as its enum has it, or a flag; null without a value. */
  Object word(Fact fact) {
    int at = fact.ordinal();
    return at < OF_JOINT ? jointWords[at] : classWords[at - OF_JOINT];
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
    private double[] jointNumbers;
    private Object[] jointWords;
    private double[] classNumbers;
    private Object[] classWords;
    private boolean ownJointNumbers;
    private boolean ownJointWords;
    private boolean ownClassNumbers;
    private boolean ownClassWords;

    private Builder(Facts facts) {
      jointNumbers = facts.jointNumbers;
      jointWords = facts.jointWords;
      classNumbers = facts.classNumbers;
      classWords = facts.classWords;
    }

    /** Sets a number. */
    public Builder number(Fact fact, double value) {
      check(fact, Fact.Kind.NUMBER);
      int at = fact.ordinal();
      if (at < OF_JOINT) {
        jointNumbers = ownJointNumbers ? jointNumbers : jointNumbers.clone();
        ownJointNumbers = true;
        jointNumbers[at] = value;
      } else {
        classNumbers = ownClassNumbers ? classNumbers : classNumbers.clone();
        ownClassNumbers = true;
        classNumbers[at - OF_JOINT] = value;
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
        jointWords = ownJointWords ? jointWords : jointWords.clone();
        ownJointWords = true;
        jointWords[at] = value;
      } else {
        classWords = ownClassWords ? classWords : classWords.clone();
        ownClassWords = true;
        classWords[at - OF_JOINT] = value;
      }
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
      ownJointNumbers = false;
      ownJointWords = false;
      ownClassNumbers = false;
      ownClassWords = false;
      return new Facts(jointNumbers, jointWords, classNumbers, classWords);
    }
  }
}
