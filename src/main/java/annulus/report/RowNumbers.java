package annulus.report;

import annulus.quantity.Estimate;
import annulus.quantity.Interval;
import annulus.quantity.Numbers;
import java.lang.reflect.RecordComponent;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** The numbers of a record, by the names of its components. */
final class RowNumbers {
  private RowNumbers() {}

  static Map<String, Double> of(Object row) {
    Map<String, Double> numbers = new LinkedHashMap<>();
    collect("", row, numbers);
    return numbers;
  }

  static String plain(double value) {
    return Numbers.plain(value);
  }

  static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static void collect(String name, Object value, Map<String, Double> into) {
    if (value instanceof Double || value instanceof Integer) {
      into.put(name, ((Number) value).doubleValue());
    } else if (value instanceof Estimate e) {
      into.put(name + " low", e.low());
      into.put(name + " likely", e.likely());
      into.put(name + " high", e.high());
    } else if (value instanceof Interval i) {
      into.put(name + " low", i.low());
      into.put(name + " high", i.high());
    } else if (value instanceof OptionalDouble o) {
      o.ifPresent(d -> into.put(name, d));
    } else if (value instanceof Optional<?> o) {
      o.ifPresent(v -> collect(name, v, into));
    } else if (value instanceof List<?> list) {
      for (int i = 0; i < list.size(); i++) {
        collect(name + " " + (i + 1), list.get(i), into);
      }
    } else if (value instanceof Record record) {
      components(name, record, into);
    }
  }

  private static void components(String name, Record record, Map<String, Double> into) {
    for (RecordComponent component : record.getClass().getRecordComponents()) {
      try {
        Object value = component.getAccessor().invoke(record);
        collect((name + " " + component.getName()).strip(), value, into);
      } catch (ReflectiveOperationException e) {
        throw new IllegalStateException(e);
      }
    }
  }
}
