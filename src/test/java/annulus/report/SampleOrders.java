package annulus.report;

import annulus.advice.Advice;
import annulus.advice.Advisor;
import annulus.advice.JointOrder;
import annulus.advice.JointOrder.CurePlace;
import annulus.advice.JointOrder.PrimerPlan;
import annulus.advice.Member;
import annulus.catalog.Catalog;
import annulus.catalog.Consequence;
import annulus.exchange.DataFiles;
import annulus.exchange.KnowledgeFiles;
import annulus.measure.Reading;
import annulus.measure.Side;
import annulus.quantity.Interval;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Invented joints, each of another kind, and their answers. */
final class SampleOrders {
  static final Advisor ADVISOR = advisor();
  static final Catalog CATALOG = ADVISOR.catalog();
  static final Instant START = Instant.parse("2026-11-25T08:10:00Z");

  private SampleOrders() {}

  private static Advisor advisor() {
    try {
      return new Advisor(KnowledgeFiles.read(DataFiles.bundled()));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** All samples by name, in a fixed order. */
  static Map<String, Advice> all() {
    Map<String, Advice> all = new LinkedHashMap<>();
    all.put("good fit", goodFit());
    all.put("rebuild", new Draft().bore(42.300, 42.303).advice());
    all.put("too loose", new Draft().bore(43.180, 43.183).advice());
    all.put("cold shop", new Draft().at(4).advice());
    all.put("cool shop", new Draft().at(9).advice());
    all.put("inert pair", inertPair());
    all.put("inert pair, no primer", new Draft().inert().primer(new PrimerPlan.None()).advice());
    all.put("calipers", calipers());
    all.put("interference", new Draft().bore(41.960, 41.961).advice());
    all.put("too tight", new Draft().bore(41.820, 41.821).advice());
    all.put("polycarbonate", new Draft().boreOf("polycarbonate", "moulded").advice());
    all.put("hot service", new Draft().hot(140).advice());
    all.put("too hot", new Draft().hot(240).advice());
    all.put("moved", new Draft().moved(90).advice());
    all.put("moved early", new Draft().moved(0).advice());
    all.put("stated gap", new Draft().stated(30, 4).advice());
    all.put("stated gap, unsure", new Draft().stated(30, 60).advice());
    all.put("nuisance", new Draft().consequence(Consequence.NUISANCE).advice());
    all.put("everything near", everythingNear());
    all.put("hostile words", hostile());
    return all;
  }

  static Advice goodFit() {
    return new Draft().advice();
  }

  static Advice calipers() {
    return new Draft().with("caliper-150", "caliper-150").advice();
  }

  static Advice inertPair() {
    return new Draft().inert().advice();
  }

  static Advice hostile() {
    return new Draft()
        .named(
            "J-<script>alert(1)</script>",
            "cup & \"shell\" <img src=x onerror=alert(1)> \u001b[31m")
        .advice();
  }

  static Advice everythingNear() {
    return new Draft()
        .inert()
        .at(12)
        .hot(95)
        .surroundings(new JointOrder.Surroundings(true, true, true, true))
        .state(Member.FaceState.OLD_COMPOUND)
        .arrives(4)
        .bore(42.060, 42.082)
        .advice();
  }

  /** Builds one order from a good fit. */
  static final class Draft {
    private String job = "J-0417";
    private String title = "Bearing cup into steel shell";
    private double[] bore = {42.040, 42.041};
    private String boreTool = "bore-micrometer-three-point";
    private String partTool = "outside-micrometer";
    private String boreMaterial = "steel-plain";
    private String boreFinish = "as-machined";
    private String partMaterial = "steel-bearing";
    private String partFinish = "ground";
    private double celsius = 20;
    private double highC = 60;
    private PrimerPlan primer = new PrimerPlan.Open();
    private Consequence consequence = Consequence.INJURY;
    private Member.FaceState state = Member.FaceState.CLEAN;
    private OptionalDouble arrives = OptionalDouble.empty();
    private Optional<JointOrder.GivenGap> given = Optional.empty();
    private Optional<Instant> moved = Optional.empty();
    private JointOrder.Surroundings surroundings =
        new JointOrder.Surroundings(false, false, false, false);

    Draft bore(double... mm) {
      bore = mm;
      return this;
    }

    Draft named(String newJob, String newTitle) {
      job = newJob;
      title = newTitle;
      return this;
    }

    Draft with(String forBore, String forPart) {
      boreTool = forBore;
      partTool = forPart;
      return this;
    }

    Draft boreOf(String material, String finish) {
      boreMaterial = material;
      boreFinish = finish;
      return this;
    }

    Draft inert() {
      partMaterial = "titanium-6al4v";
      return boreOf("aluminium-6061", "anodised");
    }

    Draft at(double newCelsius) {
      celsius = newCelsius;
      return this;
    }

    Draft hot(double newHighC) {
      highC = newHighC;
      return this;
    }

    Draft primer(PrimerPlan plan) {
      primer = plan;
      return this;
    }

    Draft consequence(Consequence newConsequence) {
      consequence = newConsequence;
      return this;
    }

    Draft state(Member.FaceState newState) {
      state = newState;
      return this;
    }

    Draft arrives(double newCelsius) {
      arrives = OptionalDouble.of(newCelsius);
      return this;
    }

    Draft surroundings(JointOrder.Surroundings newSurroundings) {
      surroundings = newSurroundings;
      return this;
    }

    Draft moved(long minutesAfter) {
      moved = Optional.of(START.plusSeconds(60 * minutesAfter));
      return this;
    }

    Draft stated(double radialUm, double plusMinusUm) {
      given = Optional.of(new JointOrder.GivenGap(42, radialUm, plusMinusUm));
      return this;
    }

    Advice advice() {
      return ADVISOR.advise(order());
    }

    JointOrder order() {
      return new JointOrder(
          job,
          title,
          member(Side.BORE, boreMaterial, boreFinish, boreTool, bore),
          member(Side.PART, partMaterial, partFinish, partTool, 41.980, 41.981),
          given,
          12,
          CurePlace.constant(celsius, 2, "bench, constant"),
          primer,
          new Interval(-20, highC),
          Optional.empty(),
          consequence,
          surroundings,
          START,
          ZoneId.of("Europe/Vienna"),
          0.95,
          Optional.empty(),
          moved,
          List.of(
              new JointOrder.Assumption("serviceLowC", "-20 °C", "default of the policy data")));
    }

    private Member member(
        Side side, String material, String finish, String tool, double... diameters) {
      boolean measured = given.isEmpty();
      return new Member(
          side,
          side == Side.BORE ? "shell" : "cup",
          CATALOG.materials().get(material),
          CATALOG.finishes().get(finish),
          measured ? Arrays.stream(diameters).mapToObj(Reading::of).toList() : List.of(),
          measured ? Optional.of(CATALOG.instruments().get(tool)) : Optional.empty(),
          20,
          1,
          arrives,
          state,
          OptionalDouble.empty());
    }
  }
}
