package annulus.exchange;

import annulus.catalog.CompoundClass;
import annulus.quantity.Estimate;
import annulus.quantity.Interval;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.Reader;
import java.io.StringWriter;
import java.io.Writer;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.LocalDate;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A shop's own {@code compounds.json}, in the format of the program's table. */
public final class ShopClassFile {
  private static final String NAME = "compounds.json";
  private static final JsonFactory FACTORY = new JsonFactory();

  private ShopClassFile() {}

  /** The table of a shop's data folder, whether or not it is there yet. */
  public static Path in(Path folder) {
    return folder.resolve(NAME);
  }

  /**
   * Puts a class into the folder's table, replacing one of the same id; the table is replaced in
   * one step, so that a crash leaves the old or the new one.
   *
   * @param folder the shop's data folder, made if it is not there
   * @param compound the class
   * @param on today, printed in the table's head
   * @return the table's path
   */
  public static Path put(Path folder, CompoundClass compound, LocalDate on) throws IOException {
    Files.createDirectories(folder);
    Path path = in(folder);
    Map<String, CompoundClass> classes = read(path);
    classes.put(compound.id(), compound);
    Path fresh = folder.resolve(NAME + ".new");
    Files.writeString(fresh, text(classes.values(), on), StandardCharsets.UTF_8);
    return Files.move(
        fresh, path, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
  }

  private static Map<String, CompoundClass> read(Path path) throws IOException {
    Map<String, CompoundClass> classes = new LinkedHashMap<>();
    if (!Files.isRegularFile(path)) {
      return classes;
    }
    Problems problems = new Problems();
    try (Reader in = DataFiles.utf8(Files.newInputStream(path))) {
      Fields.of(JsonNodes.read(path.toString(), in), problems, "")
          .ifPresent(root -> root.list("classes", n -> one(n, problems, classes)));
    }
    problems.throwIfAny();
    return classes;
  }

  private static Optional<CompoundClass> one(
      Node node, Problems problems, Map<String, CompoundClass> classes) {
    Optional<CompoundClass> read =
        Fields.of(node, problems, "classes")
            .flatMap(
                f -> {
                  Optional<CompoundClass> built =
                      Values.build(f, problems, () -> CompoundRows.compound(f, problems));
                  f.done();
                  return built;
                });
    read.ifPresent(c -> classes.put(c.id(), c));
    return read;
  }

  /** The table as JSON text. */
  public static String text(Collection<CompoundClass> classes, LocalDate on) throws IOException {
    Writer out = new StringWriter();
    try (JsonGenerator json = FACTORY.createGenerator(out).useDefaultPrettyPrinter()) {
      json.writeStartObject();
      json.writeNumberField("format", 1);
      json.writeStringField("title", "Compound classes of this shop, from its own labels");
      json.writeStringField("source", "labels of the shop's lots, as typed by the shop");
      json.writeStringField("transcribed", on.toString());
      json.writeNumberField("version", 1);
      json.writeArrayFieldStart("classes");
      for (CompoundClass compound : List.copyOf(classes)) {
        compound(json, compound);
      }
      json.writeEndArray();
      json.writeEndObject();
    }
    return out.toString().replace("\r\n", "\n") + "\n";
  }

  private static void compound(JsonGenerator json, CompoundClass c) throws IOException {
    json.writeStartObject();
    json.writeStringField("id", c.id());
    json.writeStringField("name", c.name());
    json.writeStringField("summary", c.summary());
    json.writeStringField("permanence", Fields.word(c.permanence()));
    json.writeStringField("role", Fields.word(c.role()));
    interval(json, "gapUm", c.gapUm());
    number(json, "primedGapMaxUm", c.primedGapMaxUm());
    interval(json, "viscosityMPas", c.viscosity());
    estimate(json, "strengthMPa", c.strengthMPa());
    json.writeObjectFieldStart("cure");
    cure(json, c.cure());
    json.writeEndObject();
    interval(json, "serviceC", c.serviceC());
    json.writeArrayFieldStart("hotStrength");
    for (CompoundClass.HotPoint point : c.hotStrength()) {
      json.writeStartObject();
      number(json, "celsius", point.celsius());
      estimate(json, "fraction", point.fraction());
      json.writeEndObject();
    }
    json.writeEndArray();
    estimate(json, "removalHeatC", c.removalHeatC());
    interval(json, "storageC", c.storageC());
    estimate(json, "shelfMonths", c.shelfMonths());
    estimate(json, "openMonths", c.openMonths());
    json.writeStringField("source", c.provenance().source());
    json.writeStringField("confidence", Fields.word(c.provenance().confidence()));
    json.writeEndObject();
  }

  private static void cure(JsonGenerator json, CompoundClass.Cure cure) throws IOException {
    number(json, "referenceC", cure.referenceC());
    number(json, "referenceGapUm", cure.referenceGapUm());
    estimate(json, "gapExponent", cure.gapExponent());
    estimate(json, "activationKJ", cure.activationKJ());
    number(json, "minimumC", cure.minimumC());
    number(json, "cautionBelowC", cure.cautionBelowC());
    number(json, "heldAboveC", cure.heldAboveC());
    number(json, "spreadLn", cure.spreadLn());
    json.writeArrayFieldStart("stages");
    for (CompoundClass.StagePoint point : cure.stages()) {
      json.writeStartObject();
      json.writeStringField("stage", Fields.word(point.stage()));
      number(json, "fraction", point.fraction());
      number(json, "hours", point.hours());
      json.writeEndObject();
    }
    json.writeEndArray();
    number(json, "completeHours", cure.completeHours());
    number(json, "slowFullHours", cure.slowFullHours());
    estimate(json, "workingMinutes", cure.workingMinutes());
  }

  private static void interval(JsonGenerator json, String name, Interval value) throws IOException {
    json.writeObjectFieldStart(name);
    number(json, "low", value.low());
    number(json, "high", value.high());
    json.writeEndObject();
  }

  private static void estimate(JsonGenerator json, String name, Estimate value) throws IOException {
    json.writeObjectFieldStart(name);
    number(json, "low", value.low());
    number(json, "likely", value.likely());
    number(json, "high", value.high());
    json.writeEndObject();
  }

  private static void number(JsonGenerator json, String name, double value) throws IOException {
    BigDecimal plain = new BigDecimal(Double.toString(value)).stripTrailingZeros();
    json.writeFieldName(name);
    json.writeNumber(plain.toPlainString());
  }
}
