package annulus.exchange;

import annulus.advice.JointOrder.Load;
import annulus.advice.Knowledge;
import annulus.hold.DutyCase;
import annulus.quantity.Numbers;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads the load of an order: figures, or a duty case of the trade. */
final class LoadReader {
  /** Less than a grain of sand weighs, N or N·m: no load, but a slip in the exponent. */
  private static final double LEAST = 1e-5;

  private final Knowledge knowledge;
  private final Problems problems;
  private final Measures measures;
  private final Assumptions assumed;

  LoadReader(Knowledge knowledge, Problems problems, Measures measures, Assumptions assumed) {
    this.knowledge = knowledge;
    this.problems = problems;
    this.measures = measures;
    this.assumed = assumed;
  }

  Optional<Load> read(Fields f) {
    int before = problems.count();
    Optional<DutyCase> duty = duty(f);
    OptionalDouble axial = measures.number(f, "axialN", 0, 1e7, "N");
    OptionalDouble torque = measures.number(f, "torqueNm", 0, 1e6, "N·m");
    OptionalDouble factor = measures.number(f, "safetyFactor", 0, 20, "");
    if (factor.isPresent() && factor.getAsDouble() < 1) {
      problems.add(
          f.placeOf("safetyFactor"),
          f.path("safetyFactor"),
          Numbers.plain(factor.getAsDouble()) + " is below 1",
          "1 to 20");
    }
    String repeats = repeats(f, duty);
    boolean mixed = duty.isPresent() && (axial.isPresent() || torque.isPresent());
    if (mixed) {
      problems.add(
          f.placeOf("duty"), f.path("duty"), "stands beside figures", "a duty case or figures");
    }
    if (duty.isEmpty() && !f.has("duty")) {
      refuseNothing(f, axial, torque);
    }
    f.done();
    if (problems.count() > before) {
      return Optional.empty();
    }
    return Values.build(
        f,
        problems,
        () ->
            new Load(
                axial.orElse(duty.map(d -> d.axialN().high()).orElse(0.0)),
                torque.orElse(duty.map(d -> d.torqueNm().high()).orElse(0.0)),
                repeats,
                factor));
  }

  /** A load of nothing holds nothing, and would let a joint go early. */
  private void refuseNothing(Fields f, OptionalDouble axial, OptionalDouble torque) {
    String allowed = "axialN or torqueNm above 0, or a duty case";
    if (!f.has("axialN") && !f.has("torqueNm")) {
      problems.add(f.place(), f.path(), "has no figure", allowed);
    } else if (axial.orElse(0) < LEAST && torque.orElse(0) < LEAST) {
      String first = f.has("axialN") ? "axialN" : "torqueNm";
      boolean zero = axial.orElse(0) == 0 && torque.orElse(0) == 0;
      String problem = zero ? "is zero" : "is next to nothing";
      problems.add(f.placeOf(first), f.path(first), problem, allowed);
    }
  }

  private Optional<DutyCase> duty(Fields f) {
    Optional<String> id = f.text("duty");
    if (id.isEmpty()) {
      return Optional.empty();
    }
    DutyCase duty = knowledge.duties().get(id.get());
    if (duty == null) {
      f.unknown("duty", id.get(), knowledge.duties().keySet());
      return Optional.empty();
    }
    assumed.make(
        "load",
        Numbers.plain(duty.axialN().high())
            + " N and "
            + Numbers.plain(duty.torqueNm().high())
            + " N·m",
        "high end of the duty case " + duty.id());
    return Optional.of(duty);
  }

  private String repeats(Fields f, Optional<DutyCase> duty) {
    Optional<String> said = f.text("repeats");
    if (said.isPresent() && !knowledge.hold().dynamics().containsKey(said.get())) {
      f.unknown("repeats", said.get(), knowledge.hold().dynamics().keySet());
      return knowledge.hold().roughest();
    }
    if (said.isPresent()) {
      return said.get();
    }
    if (duty.isPresent()) {
      return duty.get().dynamic();
    }
    return assumed.make("load.repeats", knowledge.hold().roughest(), "not said: the roughest");
  }
}
