package annulus.advice;

import annulus.advice.Advice.CureTimes;
import annulus.advice.Advice.Decision;
import annulus.advice.Advice.GapFinding;
import annulus.advice.Advice.HandBack;
import annulus.advice.Advice.Kind;
import annulus.advice.Advice.PlannedPrimer;
import annulus.advice.Advice.Step;
import annulus.advice.Advice.StepKind;
import annulus.catalog.Activity;
import annulus.catalog.Catalog;
import annulus.catalog.CompoundClass;
import annulus.catalog.Finish;
import annulus.catalog.Material;
import annulus.catalog.Stage;
import annulus.measure.Side;
import annulus.quantity.Numbers;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/** What to do, in workshop order. */
final class Steps {
  private static final String FACES = "faces";

  private final JointOrder order;
  private final Catalog catalog;
  private final GapFinding gap;
  private final List<Step> steps = new ArrayList<>();

  private Steps(JointOrder order, Catalog catalog, GapFinding gap) {
    this.order = order;
    this.catalog = catalog;
    this.gap = gap;
  }

  /**
   * What was found out before the steps are told.
   *
   * @param volumeMl compound to draw, mL
   * @param missing primer that has to go on before the joint may be bonded
   */
  record Made(
      Decision decision,
      Optional<CureTimes> cure,
      Optional<HandBack> handBack,
      GapFinding gap,
      double volumeMl,
      Optional<PlannedPrimer> missing) {}

  static List<Step> of(JointOrder order, Catalog catalog, Made made) {
    Steps steps = new Steps(order, catalog, made.gap());
    Decision decision = made.decision();
    if (decision.kind() == Kind.STRIP_AND_REDO) {
      steps.strip();
    } else if (decision.kind() == Kind.MEASURE_AGAIN) {
      steps.add(StepKind.MEASURE_AGAIN);
    } else {
      steps.joining(made);
    }
    return steps.steps;
  }

  /** What leads to a joint, or to an answer that says how. */
  private void joining(Made made) {
    Decision decision = made.decision();
    boolean primeAnew =
        Choice.wantsPrimerAnew(decision) && order.primer() instanceof JointOrder.PrimerPlan.Used;
    boolean leads = decision.kind().isYes() || primeAnew || made.missing().isPresent();
    if (leads && order.hasOldCompound()) {
      bare();
    } else if (decision.kind() == Kind.USE_COMPOUND) {
      bond(decision, made.cure().orElseThrow(), made.handBack(), made.volumeMl());
    } else if (decision.kind() == Kind.PRESS_DRY) {
      press(made.handBack());
    } else if (primeAnew) {
      primeAnew((JointOrder.PrimerPlan.Used) order.primer());
    } else {
      made.missing().ifPresent(this::primeWhatIsMissing);
    }
  }

  /** Under old compound nobody knows what was measured: nothing is joined before that is mended. */
  private void bare() {
    protect(true);
    faces(m -> m.state() == Member.FaceState.OLD_COMPOUND)
        .forEach((care, which) -> careful(StepKind.REMOVE_OLD_COMPOUND, care, which));
    clean(Optional.empty(), false, oldPrimer(false));
    add(StepKind.MEASURE_AGAIN);
  }

  private void bond(
      Decision decision, CureTimes cure, Optional<HandBack> handBack, double volumeMl) {
    Optional<PlannedPrimer> kept = decision.primer().flatMap(p -> Choice.kept(order));
    boolean tooQuick = tooQuick(cure);
    bringToTemperature();
    if (tooQuick) {
      add(StepKind.TOO_QUICK, Optional.of(cure.workingTime()), Optional.empty(), Map.of());
    }
    protect(true);
    clean(kept, true, oldPrimer(false));
    decision.primer().filter(p -> kept.isEmpty()).ifPresent(this::prime);
    apply(decision.compound().orElseThrow(), volumeMl);
    add(
        StepKind.PRESS_STRAIGHT,
        Optional.of(cure.workingTime()),
        Optional.empty(),
        tooQuick ? Map.of("tooQuick", "yes") : Map.of());
    centre();
    add(StepKind.WIPE);
    Optional<Duration> alone = cure.at(Stage.FIXTURE).sure().map(f -> f.plus(rest()));
    add(StepKind.LEAVE_UNDISTURBED, alone, alone.map(this::clock), Map.of());
    stage(StepKind.HANDLE, cure, Stage.HANDLING);
    Optional<Duration> test = cure.at(Stage.FUNCTIONAL).sure();
    if (handBack.isEmpty() || test.isEmpty() || later(handBack.get().after(), test.get())) {
      stage(StepKind.CHECK, cure, Stage.FUNCTIONAL);
    }
    handBack.ifPresent(this::handBack);
    Optional<Duration> full = cure.at(Stage.FULL).sure();
    if (handBack.isPresent() && handBack.get().isBefore(full)) {
      add(StepKind.TELL_LIMITED, full, full.map(this::clock), Map.of());
    }
  }

  private boolean tooQuick(CureTimes cure) {
    return cure.workingTime().toMillis() < 1000 * catalog.policy().value("push-home-least-s");
  }

  private void apply(CompoundClass compound, double volumeMl) {
    boolean film = compound.role() == CompoundClass.Role.FILM;
    Map<String, String> values = new HashMap<>();
    values.put("class", compound.name());
    values.put("ml", Numbers.fixed(volumeMl, 2));
    if (!film) {
      values.put("where", where());
    }
    StepKind kind = film ? StepKind.APPLY_FILM : StepKind.APPLY;
    add(kind, Optional.empty(), Optional.empty(), values);
  }

  /** A ring at the mouth is pushed along and fills the seat, unless that is wide or long. */
  private String where() {
    double nominal = gap.gap().nominalMm();
    boolean wide = gap.gap().largestUm() >= catalog.policy().value("coat-both-from-um");
    boolean isLong =
        order.engagementMm() > catalog.policy().value("coat-both-from-ratio") * nominal;
    String all = wide || isLong ? "all of " : "ring on ";
    if (outerIsBearing()) {
      return all + "part";
    }
    return wide || isLong ? "both" : "mouth";
  }

  /** Compound wiped into a bearing's own bore would be pushed towards its balls and seals. */
  private boolean outerIsBearing() {
    Member bore = order.bore();
    return bore.isByTolerance() || bore.material().id().equals("steel-bearing");
  }

  private void centre() {
    double um = gap.gap().largestUm();
    if (um >= catalog.policy().value("centre-from-um")) {
      Map<String, String> values = Map.of("um", Numbers.directed(um, 0, true));
      add(StepKind.CENTRE, Optional.empty(), Optional.empty(), values);
    }
  }

  /** Later by more than the rounding of a clock time. */
  private static boolean later(Duration one, Duration other) {
    return one.minus(other).compareTo(Duration.ofMinutes(1)) > 0;
  }

  private Duration rest() {
    return Duration.ofSeconds(
        (long) Math.ceil(60 * catalog.policy().value("undisturbed-after-fixture-min")));
  }

  private Instant clock(Duration after) {
    return order.start().plus(after);
  }

  private void stage(StepKind kind, CureTimes cure, Stage stage) {
    Optional<Duration> sure = cure.at(stage).sure();
    if (sure.isPresent()) {
      add(kind, sure, sure.map(this::clock), Map.of());
    }
  }

  private void press(Optional<HandBack> handBack) {
    warmUp();
    protect(false);
    clean(Optional.empty(), false, oldPrimer(false));
    String seizing = seizing();
    Map<String, String> values = seizing.isEmpty() ? Map.of() : Map.of("seizing", seizing);
    add(StepKind.PRESS_DRY, Optional.empty(), Optional.empty(), values);
    handBack.ifPresent(this::handBack);
  }

  /** What galls when it slides dry on its like; empty where the faces do not. */
  private String seizing() {
    String bore = seizes(order.bore());
    return bore.equals(seizes(order.part())) ? bore : "";
  }

  private static String seizes(Member member) {
    Finish.Film film = member.finish().film();
    boolean covered = film == Finish.Film.PLATED || film == Finish.Film.COAT;
    return switch (covered ? "" : member.material().bondFace()) {
      case "titanium" -> "Titanium in titanium";
      case "stainless-steel" -> "Stainless in stainless";
      default -> "";
    };
  }

  private void strip() {
    protect(true);
    add(StepKind.STRIP);
    faces(m -> true).forEach((care, which) -> careful(StepKind.REMOVE_OLD_COMPOUND, care, which));
    clean(Optional.empty(), false, oldPrimer(false));
    add(StepKind.REDO);
  }

  /** The faces that had the primer, and those that surely need it. */
  private void primeAnew(JointOrder.PrimerPlan.Used was) {
    boolean bore = was.onBore() || order.bore().activity() == Activity.Level.INERT;
    boolean part = was.onPart() || order.part().activity() == Activity.Level.INERT;
    bringToTemperature();
    protect(true);
    clean(Optional.empty(), true, oldPrimer(true));
    prime(new PlannedPrimer(was.primer(), bore, part, true));
  }

  private void primeWhatIsMissing(PlannedPrimer missing) {
    bringToTemperature();
    protect(true);
    clean(Choice.kept(order), true, oldPrimer(true));
    prime(missing);
  }

  private void handBack(HandBack back) {
    add(StepKind.HAND_BACK, Optional.of(back.after()), Optional.of(back.at()), Map.of());
  }

  private void protect(boolean primer) {
    Map<String, String> burns =
        Map.of("burns", primer ? "cleaner and primer burn" : "cleaner burns");
    add(StepKind.PROTECT, Optional.empty(), Optional.empty(), burns);
  }

  private void bringToTemperature() {
    warmUp();
    double room = roomC();
    Which.of(order, m -> m.arrivesAtC().orElse(room) > room)
        .ifPresent(w -> of(StepKind.COOL_DOWN, w));
  }

  private void warmUp() {
    double room = roomC();
    Which.of(order, m -> m.arrivesAtC().orElse(room) < room)
        .ifPresent(w -> of(StepKind.WARM_UP, w));
  }

  private double roomC() {
    return order.cure().air().celsiusAt(0);
  }

  private void of(StepKind kind, Which which) {
    add(kind, Optional.empty(), Optional.empty(), Map.of(FACES, which.words()));
  }

  /** The faces that pass, those with the same care together. */
  private Map<FaceCare, String> faces(Predicate<Member> test) {
    Map<FaceCare, String> faces = new EnumMap<>(FaceCare.class);
    for (FaceCare care : FaceCare.values()) {
      Which.of(order, m -> test.test(m) && FaceCare.of(m) == care)
          .ifPresent(w -> faces.put(care, w.words()));
    }
    return faces;
  }

  private void careful(StepKind kind, FaceCare care, String which) {
    Map<String, String> values = new HashMap<>();
    values.put(FACES, which);
    values.put("care", care.name().toLowerCase(Locale.ROOT));
    add(kind, Optional.empty(), Optional.empty(), values);
  }

  /** A face with live primer must not be wiped again; what is bonded bare is rubbed dull. */
  private void clean(Optional<PlannedPrimer> kept, boolean bonded, Map<String, String> oldPrimer) {
    Which.of(order, Steps::mayCrack)
        .ifPresent(
            w ->
                add(
                    StepKind.TRY_FIRST,
                    Optional.empty(),
                    Optional.empty(),
                    Map.of(
                        FACES,
                        w.words(),
                        "what",
                        bonded ? "cleaner, primer and compound" : "the cleaner")));
    if (kept.isPresent()) {
      keepPrimed(kept.get());
    } else {
      add(StepKind.CLEAN, Optional.empty(), Optional.empty(), oldPrimer);
    }
    if (bonded) {
      faces(m -> isGlossy(m) && !isOn(kept, m.side()))
          .forEach((care, which) -> careful(StepKind.ABRADE, care, which));
    }
    kept.ifPresent(this::flashOffKept);
  }

  private static boolean mayCrack(Member member) {
    return member.material().kind() == Material.Kind.PLASTIC
        && member.material().attack() != Material.Attack.NONE;
  }

  private static boolean isGlossy(Member member) {
    return member.finish().id().equals("polished") || member.finish().id().equals("moulded");
  }

  private static boolean isOn(Optional<PlannedPrimer> plan, Side side) {
    return plan.map(p -> side == Side.BORE ? p.onBore() : p.onPart()).orElse(false);
  }

  /** What has to come off with the dirt, and whether some goes on anew. */
  private Map<String, String> oldPrimer(boolean anew) {
    return order.primer() instanceof JointOrder.PrimerPlan.Used used && used.isTooOld()
        ? Map.of("oldPrimer", used.primer().name(), "newPrimer", anew ? "needed" : "none")
        : Map.of();
  }

  private void keepPrimed(PlannedPrimer plan) {
    Duration left = Duration.ofSeconds((long) (days(plan) * 86_400)).minus(age());
    String other = plan.onBore() && plan.onPart() ? "" : plan.onBore() ? "the part" : "the bore";
    add(
        StepKind.KEEP_PRIMED,
        Optional.of(left),
        Optional.of(order.start().plus(left)),
        Map.of(FACES, plan.faces(), "other", other));
  }

  private void flashOffKept(PlannedPrimer plan) {
    Duration flash = flashOff(plan);
    if (age().compareTo(flash) < 0) {
      add(
          StepKind.FLASH_OFF,
          Optional.of(flash.minus(age())),
          Optional.empty(),
          Map.of("days", Numbers.plain(days(plan))));
    }
  }

  private Duration age() {
    return ((JointOrder.PrimerPlan.Used) order.primer()).age();
  }

  private static double days(PlannedPrimer plan) {
    return plan.primer().onPartDays().low();
  }

  private void prime(PlannedPrimer plan) {
    Map<String, String> values = new HashMap<>();
    values.put("primer", plan.primer().name());
    values.put(FACES, plan.faces());
    values.put("application", plan.primer().application().name());
    Map<String, String> good = Map.of("days", Numbers.plain(days(plan)));
    boolean dryAtOnce = flashOff(plan).isZero();
    if (dryAtOnce) {
      values.putAll(good);
    }
    add(StepKind.PRIME, Optional.empty(), Optional.empty(), values);
    if (!dryAtOnce) {
      add(StepKind.FLASH_OFF, Optional.of(flashOff(plan)), Optional.empty(), good);
    }
  }

  private static Duration flashOff(PlannedPrimer plan) {
    return Duration.ofSeconds((long) Math.ceil(plan.primer().flashOffMinutes().high() * 60));
  }

  private void add(StepKind kind) {
    add(kind, Optional.empty(), Optional.empty(), Map.of());
  }

  private void add(
      StepKind kind, Optional<Duration> time, Optional<Instant> at, Map<String, String> values) {
    steps.add(new Step(kind, time, at, values));
  }
}
