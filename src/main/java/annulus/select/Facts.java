package annulus.select;

import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;

/** Values of facts: numbers, words or flags. A fact without a value makes every test false. */
public final class Facts {
  private static final int COUNT = Fact.values().length;

  /** By the ordinal of the fact; NaN where there is no number. */
  private final double[] numbers;

  /** By the ordinal of the fact: an enum's constant or a flag; null where there is none. */
  private final Object[] words;

  private Facts(double[] numbers, Object[] words) {
    this.numbers = numbers;
    this.words = words;
  }

  /** Starts a set of facts. */
  public static Builder builder() {
    double[] numbers = new double[COUNT];
    Arrays.fill(numbers, Double.NaN);
    return new Builder(numbers, new Object[COUNT]);
  }

  /** Starts a set of facts with these; what is set wins. */
  public Builder and() {
    return new Builder(numbers.clone(), words.clone());
  }

  /** These facts and the other's; the other's win. */
  public Facts with(Facts other) {
    Builder all = and();
    for (int i = 0; i < COUNT; i++) {
      all.numbers[i] = Double.isNaN(other.numbers[i]) ? all.numbers[i] : other.numbers[i];
      all.words[i] = other.words[i] == null ? all.words[i] : other.words[i];
    }
    return all.build();
  }

  /** The number of a fact; NaN without a value. */
  double number(Fact fact) {
    return numbers[fact.ordinal()];
  }

  /** The word of a fact as its enum has it, or a flag; null without a value. */
  Object word(Fact fact) {
    return words[fact.ordinal()];
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

  /** Collects values and checks their kind. */
  public static final class Builder {
    private double[] numbers;
    private Object[] words;

    private Builder(double[] numbers, Object[] words) {
      this.numbers = numbers;
      this.words = words;
    }

    /** Sets a number. */
    public Builder number(Fact fact, double value) {
      check(fact, Fact.Kind.NUMBER);
      numbers[fact.ordinal()] = value;
      return this;
    }

    /** Sets a flag. */
    public Builder flag(Fact fact, boolean value) {
      check(fact, Fact.Kind.FLAG);
      words[fact.ordinal()] = value;
      return this;
    }

    /** Sets a word from an enum; rules name it in lower case with dashes. */
    public Builder word(Fact fact, Enum<?> value) {
      check(fact, Fact.Kind.WORD);
      words[fact.ordinal()] = value;
      return this;
    }

    private static void check(Fact fact, Fact.Kind kind) {
      if (fact.kind() != kind) {
        throw new IllegalArgumentException(fact + " is a " + fact.kind());
      }
    }

    /** The facts so far; the builder is used up. */
    public Facts build() {
      Facts facts = new Facts(numbers, words);
      numbers = null;
      words = null;
      return facts;
    }
  }
}
