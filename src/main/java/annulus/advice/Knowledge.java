package annulus.advice;

import annulus.catalog.Catalog;
import annulus.fit.BearingLimits;
import annulus.fit.FrictionTable;
import annulus.fit.PressFactors;
import annulus.hold.DutyCase;
import annulus.hold.HoldTables;
import annulus.select.RuleBook;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Everything an answer is judged by, all of it from {@code data/}.
 *
 * @param catalog what the shop can work with
 * @param rules what is known about choosing
 * @param hold factors on what a bond holds
 * @param friction coefficients of press fits
 * @param press other factors of press fits
 * @param bearings tolerances of bearing rings, class Normal
 * @param duties usual loads of usual joints, by id
 * @param warmUp how parts warm up
 */
public record Knowledge(
    Catalog catalog,
    RuleBook rules,
    HoldTables hold,
    FrictionTable friction,
    PressFactors press,
    BearingLimits bearings,
    Map<String, DutyCase> duties,
    WarmUpTable warmUp) {
  public Knowledge {
    duties = Collections.unmodifiableMap(new LinkedHashMap<>(duties));
  }

  /** The same knowledge with another catalogue. */
  public Knowledge withCatalog(Catalog other) {
    return new Knowledge(other, rules, hold, friction, press, bearings, duties, warmUp);
  }

  /** Duty cases by id, in their order. */
  public static Map<String, DutyCase> byId(List<DutyCase> cases) {
    return annulus.catalog.Catalog.index(cases, DutyCase::id);
  }
}
