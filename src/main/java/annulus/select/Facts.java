package annulus.select;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;

/** Values of facts: numbers, words or flags. A fact without a value makes every test false. */
public final class Facts {
  private final Map<Fact, Object> values;

  private Facts(Map<Fact, Object> values) {
    this.values = Collections.unmodifiableMap(values);
  }

  /** Starts a set of facts. */
  public static Builder builder() {
    return new Builder();
  }

  /** These facts and the other's; the other's win. */
  public Facts with(Facts other) {
    Map<Fact, Object> all = new EnumMap<>(Fact.class);
    all.putAll(values);
    all.putAll(other.values);
    return new Facts(all);
  }

  /** The value of a fact, or null. */
  Object value(Fact fact) {
    return values.get(fact);
  }

  /** All values. */
  public Map<Fact, Object> all() {
    return values;
  }

  /** Collects values and checks their kind. */
  public static final class Builder {
    private final Map<Fact, Object> values = new EnumMap<>(Fact.class);

    private Builder() {}

    /** Sets a number. */
    public Builder number(Fact fact, double value) {
      return put(fact, Fact.Kind.NUMBER, value);
    }

    /** Sets a flag. */
    public Builder flag(Fact fact, boolean value) {
      return put(fact, Fact.Kind.FLAG, value);
    }

    /** Sets a word from an enum, in lower case with dashes. */
    public Builder word(Fact fact, Enum<?> value) {
      return put(fact, Fact.Kind.WORD, value.name().toLowerCase(Locale.ROOT).replace('_', '-'));
    }

    private Builder put(Fact fact, Fact.Kind kind, Object value) {
      if (fact.kind() != kind) {
        throw new IllegalArgumentException(fact + " is a " + fact.kind());
      }
      values.put(fact, value);
      return this;
    }

    /** The facts so far. */
    public Facts build() {
      Map<Fact, Object> copy = new EnumMap<>(Fact.class);
      copy.putAll(values);
      return new Facts(copy);
    }
  }
}
