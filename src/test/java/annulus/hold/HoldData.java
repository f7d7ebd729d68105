package annulus.hold;

import annulus.exchange.HoldFiles;
import annulus.fit.FitData;
import java.util.List;

/** The hold data as the jar carries it. */
final class HoldData {
  static final HoldTables TABLES =
      HoldFiles.factors("data/hold-factors.csv", FitData.open("hold-factors.csv"));
  static final List<DutyCase> DUTIES =
      HoldFiles.duties("data/duty-cases.csv", FitData.open("duty-cases.csv"), TABLES);

  private HoldData() {}
}
