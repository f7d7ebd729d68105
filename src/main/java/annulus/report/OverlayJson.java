package annulus.report;

import annulus.advice.Learned;
import annulus.catalog.CompoundClass;
import annulus.quantity.Estimate;
import annulus.quantity.Interval;
import java.time.LocalDate;
import java.util.List;

/** Learned classes as a shop's own {@code compounds.json}, read by {@code --data DIR}. */
public final class OverlayJson {
  /** The title by which a table of this kind is known again. */
  public static final String TITLE = "Compound classes as this shop found them";

  private final JsonOut out;

  private OverlayJson(JsonOut out) {
    this.out = out;
  }

  /**
   * The file.
   *
   * @param learned classes that were learned, at least one
   */
  public static String of(List<Learned> learned) {
    LocalDate last = learned.stream().map(Learned::last).max(LocalDate::compareTo).orElseThrow();
    return JsonOut.document(
        out -> {
          out.whole("format", 1).text("title", TITLE);
          out.text("source", "shop: learned from the shop's own observations");
          out.text("transcribed", last.toString()).whole("version", 1);
          out.list("classes", learned, l -> new OverlayJson(out).compound(l.learned()));
        });
  }

  private void compound(CompoundClass c) {
    out.text("id", c.id()).text("name", c.name()).text("summary", c.summary());
    out.text("permanence", StageTexts.id(c.permanence())).text("role", StageTexts.id(c.role()));
    interval("gapUm", c.gapUm());
    out.significant("primedGapMaxUm", c.primedGapMaxUm());
    interval("viscosityMPas", c.viscosity());
    estimate("strengthMPa", c.strengthMPa());
    out.object("cure", () -> cure(c.cure()));
    interval("serviceC", c.serviceC());
    out.list(
        "hotStrength",
        c.hotStrength(),
        h -> {
          out.significant("celsius", h.celsius());
          estimate("fraction", h.fraction());
        });
    estimate("removalHeatC", c.removalHeatC());
    interval("storageC", c.storageC());
    estimate("shelfMonths", c.shelfMonths());
    estimate("openMonths", c.openMonths());
    out.text("source", c.provenance().source());
    out.text("confidence", StageTexts.id(c.provenance().confidence()));
  }

  private void cure(CompoundClass.Cure c) {
    out.significant("referenceC", c.referenceC());
    out.significant("referenceGapUm", c.referenceGapUm());
    estimate("gapExponent", c.gapExponent());
    estimate("activationKJ", c.activationKJ());
    out.significant("minimumC", c.minimumC()).significant("cautionBelowC", c.cautionBelowC());
    out.significant("heldAboveC", c.heldAboveC()).significant("spreadLn", c.spreadLn());
    out.list(
        "stages",
        c.stages(),
        s ->
            out.text("stage", StageTexts.id(s.stage()))
                .significant("fraction", s.fraction())
                .significant("hours", s.hours()));
    out.significant("completeHours", c.completeHours());
    out.significant("slowFullHours", c.slowFullHours());
    estimate("workingMinutes", c.workingMinutes());
  }

  private void interval(String name, Interval value) {
    out.object(name, () -> out.significant("low", value.low()).significant("high", value.high()));
  }

  private void estimate(String name, Estimate value) {
    out.object(
        name,
        () ->
            out.significant("low", value.low())
                .significant("likely", value.likely())
                .significant("high", value.high()));
  }
}
