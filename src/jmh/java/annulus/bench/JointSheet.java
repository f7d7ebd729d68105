package annulus.bench;

import annulus.select.Condition;
import annulus.select.Fact;
import annulus.select.Rule;
import annulus.select.RuleBook;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.apache.poi.hssf.usermodel.HSSFFormulaEvaluator;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.CellReference;

/**
 * The same joint as a shop keeps it in a spreadsheet: readings, budget, gap, every rule on every
 * class, cure times with their curve, hold and hand-back as cells with formulas. Its layout is that
 * of demo order 01: six bore readings at two depths and three angles, three part readings, all at
 * places of their own.
 */
final class JointSheet {
  private final HSSFWorkbook book = new HSSFWorkbook();
  private final Sheet sheet = book.createSheet("joint");
  private final Map<String, String> cells = new LinkedHashMap<>();
  private final PlainJoint j;
  private final Map<Fact, Object> facts;
  private final int classes;
  private HSSFFormulaEvaluator evaluator;
  private Cell[] outputs;
  private int rows;

  JointSheet(PlainJoint joint, RuleBook rules, Map<Fact, Object> facts) {
    this.j = joint;
    this.facts = facts;
    this.classes = joint.classes.length;
    readings();
    budget("bore", joint.bore);
    budget("part", joint.part);
    gap();
    classTable();
    ruleTable(rules);
    choice(rules);
    cure();
    hold();
    handBack();
  }

  /** Must be called once, after the sheet is laid out. */
  JointSheet ready() {
    evaluator = book.getCreationHelper().createFormulaEvaluator();
    List<Cell> all = new ArrayList<>();
    for (Row row : sheet) {
      for (Cell cell : row) {
        if (cell.getCellType() == CellType.FORMULA) {
          all.add(cell);
        }
      }
    }
    outputs = all.toArray(new Cell[0]);
    for (Cell cell : outputs) {
      if (evaluator.evaluate(cell).getCellType() == CellType.ERROR) {
        throw new IllegalStateException(
            cell.getRow().getCell(0) + ": " + cell.getCellFormula() + " is an error");
      }
    }
    return this;
  }

  int formulas() {
    return outputs.length;
  }

  /** Types a reading in, recalculates what depends on it, and reads every result. */
  double recalculate(double firstBoreReadingMm) {
    Cell input = cell("b1");
    input.setCellValue(firstBoreReadingMm);
    evaluator.notifyUpdateCell(input);
    double sum = 0;
    for (Cell output : outputs) {
      sum += evaluator.evaluate(output).getNumberValue();
    }
    return sum;
  }

  double value(String name) {
    return evaluator.evaluate(cell(name)).getNumberValue();
  }

  private Cell cell(String name) {
    var at = new CellReference(cells.get(name));
    return sheet.getRow(at.getRow()).getCell(at.getCol());
  }

  private void number(String name, double value) {
    at(name, 1).setCellValue(value);
  }

  private void formula(String name, String text) {
    at(name, 1).setCellFormula(filled(text));
  }

  private Cell at(String name, int column) {
    Row row = sheet.createRow(rows++);
    row.createCell(0).setCellValue(name);
    Cell cell = row.createCell(column);
    cells.put(name, new CellReference(cell).formatAsString(false));
    return cell;
  }

  /** A row with one cell for each class. */
  private void perClass(String name, java.util.function.IntFunction<Object> of) {
    Row row = sheet.createRow(rows++);
    row.createCell(0).setCellValue(name);
    for (int i = 0; i < classes; i++) {
      Cell cell = row.createCell(i + 1);
      cells.put(name + i, new CellReference(cell).formatAsString(false));
      Object value = of.apply(i);
      if (value instanceof Double d) {
        cell.setCellValue(d);
      } else {
        cell.setCellFormula(filled(String.valueOf(value)));
      }
    }
    String first = cells.get(name + "0");
    String last = cells.get(name + (classes - 1));
    cells.put(name + "*", first + ":" + last);
  }

  /** Puts the addresses in place of names in braces. */
  private String filled(String text) {
    StringBuilder out = new StringBuilder();
    int from = 0;
    for (int open = text.indexOf('{'); open >= 0; open = text.indexOf('{', from)) {
      int close = text.indexOf('}', open);
      String name = text.substring(open + 1, close);
      String address = cells.get(name);
      if (address == null) {
        throw new IllegalStateException("no cell " + name + " for " + text);
      }
      out.append(text, from, open).append(address);
      from = close + 1;
    }
    return out.append(text.substring(from)).toString();
  }

  private void readings() {
    for (int i = 0; i < 6; i++) {
      number("b" + (i + 1), j.bore.mm[i]);
    }
    for (int i = 0; i < 3; i++) {
      number("p" + (i + 1), j.part.mm[i]);
    }
    number("room", j.roomC);
    number("room+-", j.roomPlusMinusC);
    number("level", j.confidence);
    number("length", j.engagement);
    number("service.low", j.serviceLow);
    number("service.high", j.serviceHigh);
    for (int d = 0; d < 2; d++) {
      String a = "{b" + (3 * d + 1) + "}";
      String b = "{b" + (3 * d + 2) + "}";
      String c = "{b" + (3 * d + 3) + "}";
      formula(
          "amplitude" + d,
          "2/3*SQRT((_a-0.5*_b-0.5*_c)^2+0.75*(_b-_c)^2)"
              .replace("_a", a)
              .replace("_b", b)
              .replace("_c", c));
      formula("middle" + d, "AVERAGE(" + a + "," + b + "," + c + ")");
    }
    formula(
        "bore.max",
        "MAX({b1},{b2},{b3},{b4},{b5},{b6},{middle0}+{amplitude0},{middle1}+{amplitude1})");
    formula(
        "bore.min",
        "MIN({b1},{b2},{b3},{b4},{b5},{b6},{middle0}-{amplitude0},{middle1}-{amplitude1})");
    formula("part.max", "MAX({p1},{p2},{p3})");
    formula("part.min", "MIN({p1},{p2},{p3})");
    formula("bore.mean", "AVERAGE({b1},{b2},{b3},{b4},{b5},{b6})");
    formula("part.mean", "AVERAGE({p1},{p2},{p3})");
    formula("bore.var", "VAR({b1},{b2},{b3},{b4},{b5},{b6})*1000000/6");
    formula("part.var", "VAR({p1},{p2},{p3})*1000000/3");
    formula(
        "bore.oval",
        "MAX(2000*{amplitude0},2000*{amplitude1},"
            + "1000*(MAX({b1},{b2},{b3})-MIN({b1},{b2},{b3})),"
            + "1000*(MAX({b4},{b5},{b6})-MIN({b4},{b5},{b6})))");
    formula("part.oval", "1000*ABS({p1}-{p2})");
    formula("bore.taper", "1000*ABS({middle0}-{middle1})");
    formula("part.taper", "1000*ABS(({p1}+{p2})/2-{p3})");
  }

  private void budget(String side, PlainMember m) {
    int places = m.mm.length;
    number(side + ".mpe", m.mpe);
    number(side + ".step", m.resolution);
    number(side + ".steps", j.steps);
    number(side + ".c", m.celsius);
    number(side + ".c+-", m.plusMinusC);
    number(side + ".alpha", m.expansion);
    number(side + ".alpha.low", m.expansionLow);
    number(side + ".alpha.high", m.expansionHigh);
    number(side + ".scale", j.scaleExpansion);
    formula(side + ".repeat", fill("{S.steps}*{S.step}/SQRT(3)", side));
    formula(side + ".u.instrument", fill("{S.mpe}/SQRT(3)", side));
    formula(side + ".u.step", fill("{S.step}/2/SQRT(3)", side));
    formula(
        side + ".u.temperature",
        fill("{S.mean}/1000*MAX(ABS({S.alpha.low}),ABS({S.alpha.high}))*{S.c+-}/SQRT(3)", side));
    formula(
        side + ".u.expansion",
        fill(
            "{S.mean}/1000*MAX({S.alpha.high}-{S.alpha},{S.alpha}-{S.alpha.low})"
                + "*ABS({S.c}-20)/SQRT(3)",
            side));
    formula(side + ".u.scale", fill("{S.mean}/1000*{S.scale}*ABS({S.c}-20)/SQRT(3)", side));
    String fixed = "{S.u.instrument},{S.u.step},{S.u.temperature},{S.u.expansion},{S.u.scale}";
    formula(
        side + ".var.mean",
        fill("SUMSQ({S.repeat}/SQRT(" + places + ")," + fixed + ")+{S.var}", side));
    formula(side + ".var.extreme", fill("SUMSQ({S.repeat}," + fixed + ")", side));
    formula(side + ".to20", fill("1-{S.alpha}*0.000001*({S.c}-20)", side));
  }

  private static String fill(String text, String side) {
    return text.replace("{S.", "{" + side + ".");
  }

  private void gap() {
    formula("nominal", "{bore.mean}*{bore.to20}");
    formula("gap.mean", "500*({bore.mean}*{bore.to20}-{part.mean}*{part.to20})");
    formula("gap.largest", "500*({bore.max}*{bore.to20}-{part.min}*{part.to20})");
    formula("gap.smallest", "500*({bore.min}*{bore.to20}-{part.max}*{part.to20})");
    formula("u", "SQRT({bore.var.extreme}+{part.var.extreme})/2");
    formula("u.mean", "SQRT({bore.var.mean}+{part.var.mean})/2");
    formula("U", "NORMSINV((1+{level})/2)*{u}");
    formula("gap.upper", "{gap.largest}+{U}");
    formula("gap.lower", "{gap.smallest}-{U}");
    formula("one.sided", "MAX(0,2*{gap.upper})");
    number("dry.from", j.dryFrom);
    number("line", j.lineToLine);
    formula("p.dry", "NORMDIST({dry.from},{gap.largest},{u},TRUE)");
    formula(
        "fit",
        "IF({p.dry}>={level},\"interference\","
            + "IF({gap.mean}<={line},\"line-to-line\",\"clear\"))");
    formula("move.room", "{nominal}*({bore.alpha}-{part.alpha})*({room}-20)/2000");
    formula(
        "closed.upper",
        "{gap.upper}+IF({room}-{room+-}<20,MAX(0,{nominal}*({bore.alpha}-{part.alpha})"
            + "*({room}-{room+-}-20)/2000),0)");
    formula("gap.assembly", "{gap.mean}+{move.room}");
    formula("gap.cold", "{gap.mean}+{nominal}*({bore.alpha}-{part.alpha})*({service.low}-20)/2000");
    formula("gap.hot", "{gap.mean}+{nominal}*({bore.alpha}-{part.alpha})*({service.high}-20)/2000");
    formula(
        "growth",
        "MAX(0,{nominal}*IF({service.low}>=20,{bore.alpha.high}-{part.alpha.low},"
            + "{bore.alpha.low}-{part.alpha.high})*({service.low}-20)/2000-{move.room},"
            + "{nominal}*IF({service.high}>=20,{bore.alpha.high}-{part.alpha.low},"
            + "{bore.alpha.low}-{part.alpha.high})*({service.high}-20)/2000-{move.room})");
    formula(
        "tightest",
        "{gap.mean}+{nominal}*MIN("
            + closing("room")
            + ","
            + closing("service.low")
            + ","
            + closing("service.high")
            + ")/2000");
  }

  private void classTable() {
    perClass("gapLow", i -> j.classes[i].gapLow);
    perClass("gapHigh", i -> j.classes[i].gapHigh);
    perClass("strength", i -> j.classes[i].strength);
    perClass("strengthLow", i -> j.classes[i].strengthLow);
    perClass("strengthHigh", i -> j.classes[i].strengthHigh);
    for (int s = 0; s < 5; s++) {
      int at = s;
      perClass("hours" + s + "_", i -> j.classes[i].hours[at]);
      perClass("fraction" + s + "_", i -> j.classes[i].fraction[at]);
    }
    perClass("slowFull", i -> j.classes[i].slowFullHours);
    perClass("working", i -> j.classes[i].workingLow);
    for (String which : List.of("low", "likely", "high")) {
      perClass("hot." + which, i -> hotFormula(j.classes[i], which));
    }
    perClass(
        "covers",
        i ->
            "NORMDIST({gapHigh"
                + i
                + "},{gap.largest},{u},TRUE)-NORMDIST({gapLow"
                + i
                + "},{gap.largest},{u},TRUE)");
  }

  private static String hotFormula(PlainClass c, String which) {
    double[] y = which.equals("low") ? c.hotLow : which.equals("high") ? c.hotHigh : c.hot;
    return "IF({service.high}>"
        + c.serviceHigh
        + ",0,"
        + between("{service.high}", c.hotC, y)
        + ")";
  }

  /** Straight lines between points as nested tests. */
  private static String closing(String celsius) {
    String at = "{" + celsius + "}";
    return "IF("
        + at
        + ">=20,{bore.alpha.low}-{part.alpha.high},{bore.alpha.high}-{part.alpha.low})*("
        + at
        + "-20)";
  }

  private static String between(String x, double[] at, double[] y) {
    StringBuilder text = new StringBuilder("IF(" + x + "<=" + at[0] + "," + y[0]);
    for (int i = 1; i < at.length; i++) {
      double slope = (y[i] - y[i - 1]) / (at[i] - at[i - 1]);
      text.append(",IF(" + x + "<=" + at[i] + "," + y[i - 1]);
      text.append("+(" + x + "-" + at[i - 1] + ")*" + slope);
    }
    return text.append("," + y[y.length - 1]).append(")".repeat(at.length)).toString();
  }

  /** Where a fact of the joint stands; those that are typed in get a cell of their own. */
  private String factCell(Fact fact, int i) {
    return switch (fact) {
      case GAP_LIKELY -> "{gap.largest}";
      case GAP_LARGEST -> "{gap.upper}";
      case GAP_SMALLEST -> "{gap.lower}";
      case GAP_ONE_SIDED -> "{one.sided}";
      case GAP_GROWTH -> "{growth}";
      case GAP_TIGHTEST -> "{tightest}";
      case FIT -> "{fit}";
      case OVALITY -> "(MAX({bore.oval},{part.oval})/2)";
      case TAPER -> "(MAX({bore.taper},{part.taper})/2)";
      case ENGAGEMENT_RATIO -> "({length}/{nominal})";
      case WANTED_CONFIDENCE -> "{level}";
      case COLDEST_CURE, WARMEST_CURE -> "({room}-{room+-})";
      case SERVICE_LOW -> "{service.low}";
      case SERVICE_HIGH -> "{service.high}";
      case CLASS_GAP_LOW -> "{gapLow" + i + "}";
      case CLASS_GAP_HIGH -> "{gapHigh" + i + "}";
      case CLASS_COVERS -> "{covers" + i + "}";
      case CLASS_HOT_FRACTION -> "{hot.likely" + i + "}";
      case CLASS_SERVICE_LOW -> number(j.classes[i].serviceLow);
      case CLASS_SERVICE_HIGH -> number(j.classes[i].serviceHigh);
      case CLASS_MINIMUM -> number(j.classes[i].minimumC);
      case CLASS_CAUTION -> number(j.classes[i].cautionC);
      case CLASS_PERMANENCE -> j.classes[i].lasting ? "\"lasting\"" : "\"releasable\"";
      case CLASS_ROLE ->
          j.classes[i].film ? "\"film\"" : j.classes[i].rebuild ? "\"rebuild\"" : "\"retain\"";
      default -> "{fact." + fact.id() + "}";
    };
  }

  private static String number(double x) {
    return String.valueOf(x);
  }

  private void ruleTable(RuleBook rules) {
    for (Map.Entry<Fact, Object> fact : facts.entrySet()) {
      if (factCell(fact.getKey(), 0).startsWith("{fact.")) {
        Cell cell = at("fact." + fact.getKey().id(), 1);
        if (fact.getValue() instanceof Double d) {
          cell.setCellValue(d);
        } else if (fact.getValue() instanceof Boolean b) {
          cell.setCellValue(b);
        } else {
          cell.setCellValue(fact.getValue().toString());
        }
      }
    }
    for (Rule rule : rules.rules()) {
      if (rule.ofJoint()) {
        formula("rule." + rule.id(), "IF(" + test(rule.when(), 0) + ",1,0)");
      } else {
        perClass("rule." + rule.id(), i -> "IF(" + test(rule.when(), i) + ",1,0)");
      }
    }
  }

  private String test(Condition when, int i) {
    if (when instanceof Condition.All all) {
      return "AND(" + tests(all.parts(), i) + ")";
    }
    if (when instanceof Condition.Any any) {
      return "OR(" + tests(any.parts(), i) + ")";
    }
    if (when instanceof Condition.Against a) {
      return known(a.fact()) ? factCell(a.fact(), i) + sign(a.comparison()) + a.limit() : "FALSE";
    }
    if (when instanceof Condition.Between b) {
      return known(b.fact()) && known(b.other())
          ? factCell(b.fact(), i) + sign(b.comparison()) + factCell(b.other(), i)
          : "FALSE";
    }
    Condition.Is is = (Condition.Is) when;
    if (!known(is.fact())) {
      return "FALSE";
    }
    String cell = factCell(is.fact(), i);
    return "OR("
        + is.values().stream()
            .map(
                v ->
                    cell
                        + "="
                        + (v instanceof String
                            ? "\"" + v + "\""
                            : v.equals(true) ? "TRUE" : "FALSE"))
            .collect(Collectors.joining(","))
        + ")";
  }

  private boolean known(Fact fact) {
    return fact.ofClass() || facts.containsKey(fact);
  }

  private String tests(List<Condition> parts, int i) {
    return parts.stream().map(p -> test(p, i)).collect(Collectors.joining(","));
  }

  private static String sign(Condition.Comparison comparison) {
    return switch (comparison) {
      case ABOVE -> ">";
      case AT_LEAST -> ">=";
      case BELOW -> "<";
      case AT_MOST -> "<=";
    };
  }

  private void choice(RuleBook rules) {
    for (Rule.Verdict verdict :
        List.of(Rule.Verdict.EXCLUDES, Rule.Verdict.NEEDS_PRIMER, Rule.Verdict.PREFERS)) {
      perClass(
          verdict.name(),
          i ->
              rules.rules().stream()
                  .filter(r -> r.verdict() == verdict)
                  .map(r -> "{rule." + r.id() + (r.ofJoint() ? "}" : i + "}"))
                  .collect(Collectors.joining("+")));
    }
    perClass(
        "rank",
        i ->
            "IF({EXCLUDES"
                + i
                + "}+{NEEDS_PRIMER"
                + i
                + "}>0,999999,"
                + "{gapHigh"
                + i
                + "}*100-{PREFERS"
                + i
                + "}*10-{strength"
                + i
                + "}/100)");
    formula("chosen", "MATCH(MIN({rank*}),{rank*},0)");
  }

  private String chosen(String name) {
    return "INDEX({" + name + "*},1,{chosen})";
  }

  private void cure() {
    PlainClass c = j.classes[0]; // all classes share these figures
    int b = j.bore.activity;
    int p = j.part.activity;
    number("rate.bore", j.rate[b]);
    number("rate.part", j.rate[p]);
    number("rate.bore.low", j.rateLow[b]);
    number("rate.part.low", j.rateLow[p]);
    number("rate.bore.high", j.rateHigh[b]);
    number("rate.part.high", j.rateHigh[p]);
    number("Ea", c.activation * 1000 / 8.31446261815324);
    number("Ea.low", c.activationLow * 1000 / 8.31446261815324);
    number("Ea.high", c.activationHigh * 1000 / 8.31446261815324);
    number("Tref", c.referenceC + 273.15);
    number("sigma.class", c.spread);
    number("gap.ref", c.referenceGap);
    number("n", c.exponent);
    number("n.high", c.exponentHigh);
    formula("F.faces", "(1/{rate.bore}+1/{rate.part})/2");
    formula("sigma", "LN((1/{rate.bore.low}+1/{rate.part.low})/2/{F.faces})/1.6448536269514722");
    formula("spread", "EXP(NORMSINV({level})*SQRT({sigma.class}^2+{sigma}^2))");
    formula(
        "F.gap", "MAX(1,(MAX(0,{gap.largest}+IF({room}<20,MAX(0,{move.room}),0))/{gap.ref})^{n})");
    formula("F.gap.slow", "MAX({F.gap},(MAX(0,{closed.upper})/{gap.ref})^{n.high},1)");
    formula("A", "EXP(-{Ea}*(1/({room}+273.15)-1/{Tref}))");
    formula("cold", "{room}-{room+-}");
    formula(
        "A.slow",
        "MIN(EXP(-{Ea.low}*(1/({cold}+273.15)-1/{Tref})),"
            + "EXP(-{Ea.high}*(1/({cold}+273.15)-1/{Tref})))");
    formula("warm", "{room}+{room+-}");
    formula(
        "A.quick",
        "MAX(EXP(-{Ea.low}*(1/({warm}+273.15)-1/{Tref})),"
            + "EXP(-{Ea.high}*(1/({warm}+273.15)-1/{Tref})))");
    formula("per.typical", "{F.faces}*{F.gap}/{A}*3600");
    formula("per.sure", "{F.faces}*{F.gap.slow}*{spread}/{A.slow}*3600");
    for (int s = 0; s < 5; s++) {
      formula("h" + s, chosen("hours" + s + "_"));
      formula("s" + s, chosen("fraction" + s + "_"));
    }
    for (int s = 0; s < 4; s++) {
      formula("typical" + s, "ROUNDUP({h" + s + "}*{per.typical},0)");
      formula("sure" + s, "ROUNDUP({h" + s + "}*{per.sure},0)");
    }
    formula("slow.practice", "ROUNDUP(" + chosen("slowFull") + "*{F.gap.slow}/{A}*3600,0)");
    formula(
        "working.s",
        "ROUNDDOWN("
            + chosen("working")
            + "*MAX(1,(1/{rate.bore.high}+1/{rate.part.high})/2)/{A.quick}*60,0)");
    formula("first", "MAX(60,{typical0}/2)");
    formula("last", "MAX(2*{first},{sure3}*1.1)");
    for (int i = 0; i < PlainKernel.POINTS; i++) {
      formula("t" + i, "ROUND({first}*({last}/{first})^(" + i + "/48),0)");
      formula("t" + i + ".typical", strength("({t" + i + "}/{per.typical})"));
      formula("t" + i + ".sure", strength("({t" + i + "}/{per.sure})"));
    }
  }

  /** Share of the strength after reduced hours. */
  private static String strength(String hours) {
    StringBuilder text = new StringBuilder("IF(" + hours + "<{h0},0");
    for (int s = 1; s < 5; s++) {
      String low = "{h" + (s - 1) + "}";
      String from = "{s" + (s - 1) + "}";
      text.append(",IF(" + hours + "<{h" + s + "}," + from + "+({s" + s + "}-" + from + ")*LN(");
      text.append(hours + "/" + low + ")/LN({h" + s + "}/" + low + ")");
    }
    return text.append(",{s4}").append(")".repeat(5)).toString();
  }

  private void hold() {
    formula("from", "MAX(0,{gap.lower})");
    formula("to", "MAX(0,{gap.upper})");
    formula("area", "PI()*{nominal}*{length}");
    for (String which : List.of("low", "likely", "high")) {
      PlainCurve g = j.gapFactor;
      PlainCurve e = j.engagementFactor;
      double[] gy = which.equals("low") ? g.low : which.equals("high") ? g.high : g.likely;
      double[] ey = which.equals("low") ? e.low : which.equals("high") ? e.high : e.likely;
      boolean high = which.equals("high");
      StringBuilder inner = new StringBuilder();
      for (int i = 0; i < g.at.length; i++) {
        inner.append(",IF(AND({from}<" + g.at[i] + ",{to}>" + g.at[i] + ")," + gy[i]);
        inner.append(high ? ",0)" : ",1)");
      }
      formula(
          "f.gap." + which,
          (high ? "MAX(" : "MIN(")
              + between("{from}", g.at, gy)
              + ","
              + between("{to}", g.at, gy)
              + inner
              + ")");
      formula("f.length." + which, between("({length}/{nominal})", e.at, ey));
      number("f.face." + which, face(which));
      number("f.finish." + which, finish(which));
      String strength = which.equals("likely") ? "strength" : high ? "strengthHigh" : "strengthLow";
      formula(
          "cold." + which,
          "{area}*"
              + chosen(strength)
              + "*{f.gap._}*{f.length._}*{f.face._}*{f.finish._}".replace("_", which));
      formula("hot." + which, "{cold." + which + "}*" + chosen("hot." + which));
    }
    formula("torque", "{hot.likely}*{nominal}/2000");
  }

  private double face(String which) {
    return switch (which) {
      case "low" -> Math.min(j.bore.faceLow, j.part.faceLow);
      case "high" -> Math.min(j.bore.faceHigh, j.part.faceHigh);
      default -> Math.min(j.bore.face, j.part.face);
    };
  }

  private double finish(String which) {
    return switch (which) {
      case "low" -> Math.min(1, Math.min(j.bore.finishLow, j.part.finishLow));
      case "high" -> Math.min(1, Math.min(j.bore.finishHigh, j.part.finishHigh));
      default -> Math.min(1, Math.min(j.bore.finish, j.part.finish));
    };
  }

  private void handBack() {
    number("rest", j.rest);
    formula(
        "after",
        "ROUNDUP(MAX({sure0}+60*{rest},{sure"
            + j.releaseStage
            + "}"
            + (j.slowPractice ? ",{slow.practice}" : "")
            + ")/60,0)");
    formula("held", "{hot.likely}*MIN(1," + strength("({after}*60/{per.sure})") + ")");
    formula(
        "draw",
        "ROUNDUP(MAX("
            + j.leastDraw
            + ",PI()/4*({nominal}^2-({nominal}-2*MAX("
            + j.wettingFilm
            + ",{closed.upper})/1000)^2)*{length}/1000*"
            + j.waste
            + "),3)");
  }
}
