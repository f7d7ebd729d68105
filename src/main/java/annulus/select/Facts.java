package annulus.select;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;

/** Values of facts: numbers, words or flags. A fact without a value makes every test false. */
public final class Facts {
  /** By the ordinal of the fact; null where there is no value. */
  private final Object[] values;

  private Facts(Object[] values) {
    this.values = values;
  }

  /** Starts a set of facts. */
  public static Builder builder() {
    return new Builder();
  }

  /** These facts and the other's; the other's win. */
  public Facts with(Facts other) {
    Object[] all = values.clone();
    for (int i = 0; i < all.length; i++) {
      all[i] = other.values[i] == null ? all[i] : other.values[i];
    }
    return new Facts(all);
  }

  /** The value of a fact, or null. */
  Object value(Fact fact) {
    return values[fact.ordinal()];
  }

  /** All values. */
  public Map<Fact, Object> all() {
    Map<Fact, Object> all = new EnumMap<>(Fact.class);
    for (Fact fact : Fact.values()) {
      if (value(fact) != null) {
        all.put(fact, value(fact));
      }
    }
    return Collections.unmodifiableMap(all);
  }

  /** Collects values and checks their kind. */
  public static final class Builder {
    private final Object[] values = new Object[Fact.values().length];

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
      values[fact.ordinal()] = value;
      return this;
    }

    /** The facts so far. */
    public Facts build() {
      return new Facts(values.clone());
    }
  }
}
