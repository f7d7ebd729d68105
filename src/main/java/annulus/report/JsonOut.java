package annulus.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;

/** Writes JSON with two spaces and LF, fields in the order of the calls, absent values as null. */
final class JsonOut {
  /** Lengths and times to a thousandth: finer digits are noise of the machine. */
  private static final int DECIMALS = 3;

  private static final int DIAMETER_DECIMALS = 5;

  private static final int PROBABILITY_DECIMALS = 9;

  private static final JsonFactory FACTORY = new JsonFactory();

  private final JsonGenerator json;

  private JsonOut(JsonGenerator json) {
    this.json = json;
  }

  /** One document, ended by LF. */
  static String document(Consumer<JsonOut> content) {
    StringWriter text = new StringWriter();
    try (JsonGenerator generator = FACTORY.createGenerator(text)) {
      DefaultIndenter indent = new DefaultIndenter("  ", "\n");
      DefaultPrettyPrinter printer =
          new DefaultPrettyPrinter(
              Separators.createDefaultInstance()
                  .withObjectFieldValueSpacing(Separators.Spacing.AFTER)
                  .withObjectEmptySeparator("")
                  .withArrayEmptySeparator(""));
      printer.indentArraysWith(indent);
      printer.indentObjectsWith(indent);
      generator.setPrettyPrinter(printer);
      generator.writeStartObject();
      content.accept(new JsonOut(generator));
      generator.writeEndObject();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return text.append('\n').toString();
  }

  private interface Write {
    void to(JsonGenerator json) throws IOException;
  }

  private JsonOut write(Write what) {
    try {
      what.to(json);
      return this;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  JsonOut text(String name, String value) {
    return write(j -> j.writeStringField(name, value));
  }

  JsonOut text(String name, Optional<String> value) {
    return value.isPresent() ? text(name, value.get()) : nothing(name);
  }

  JsonOut flag(String name, boolean value) {
    return write(j -> j.writeBooleanField(name, value));
  }

  JsonOut whole(String name, long value) {
    return write(j -> j.writeNumberField(name, value));
  }

  JsonOut whole(String name, Optional<Long> value) {
    return value.isPresent() ? whole(name, value.get()) : nothing(name);
  }

  /** A length, temperature or other figure; infinite as null. */
  JsonOut number(String name, double value) {
    return figure(name, value, DECIMALS);
  }

  JsonOut number(String name, OptionalDouble value) {
    return value.isPresent() ? number(name, value.getAsDouble()) : nothing(name);
  }

  /** A diameter: to a hundredth of a micrometre. */
  JsonOut diameter(String name, double mm) {
    return figure(name, mm, DIAMETER_DECIMALS);
  }

  /** Rounded down, so that it never seems to reach what it is held to. */
  JsonOut probability(String name, double value) {
    return write(j -> j.writeFieldName(name)).raw(Figures.probability(value, PROBABILITY_DECIMALS));
  }

  /** A figure of unknown size: six significant digits. */
  JsonOut significant(String name, double value) {
    return Double.isFinite(value)
        ? write(j -> j.writeFieldName(name)).raw(Figures.significant(value))
        : nothing(name);
  }

  private JsonOut figure(String name, double value, int decimals) {
    return Double.isFinite(value)
        ? write(j -> j.writeFieldName(name)).raw(Figures.trimmed(value, decimals))
        : nothing(name);
  }

  private JsonOut raw(String number) {
    return write(j -> j.writeNumber(number));
  }

  JsonOut nothing(String name) {
    return write(j -> j.writeNullField(name));
  }

  JsonOut object(String name, Runnable content) {
    write(j -> j.writeObjectFieldStart(name));
    content.run();
    return write(JsonGenerator::writeEndObject);
  }

  <T> JsonOut object(String name, Optional<T> value, Consumer<T> content) {
    return value.isPresent() ? object(name, () -> content.accept(value.get())) : nothing(name);
  }

  /** A list of objects. */
  <T> JsonOut list(String name, List<T> values, Consumer<T> content) {
    write(j -> j.writeArrayFieldStart(name));
    for (T value : values) {
      write(JsonGenerator::writeStartObject);
      content.accept(value);
      write(JsonGenerator::writeEndObject);
    }
    return write(JsonGenerator::writeEndArray);
  }

  JsonOut texts(String name, List<String> values) {
    write(j -> j.writeArrayFieldStart(name));
    values.forEach(v -> write(j -> j.writeString(v)));
    return write(JsonGenerator::writeEndArray);
  }

  /** A fact's value as it was looked at. */
  JsonOut value(String name, Object value) {
    if (value instanceof Double d) {
      return figure(name, d, PROBABILITY_DECIMALS);
    }
    return value instanceof Boolean b ? flag(name, b) : text(name, value.toString());
  }

  /** A radial length and the same on the diameter, µm. */
  JsonOut radial(String what, double um) {
    return number(what + "RadialUm", um).number(what + "DiametralUm", 2 * um);
  }
}
