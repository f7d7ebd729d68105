package annulus.exchange;

import annulus.fit.BearingLimits;
import annulus.fit.BearingRing;
import annulus.fit.iso286.DeviationRow;
import annulus.fit.iso286.GradeRow;
import annulus.fit.iso286.Iso286Tables;
import annulus.fit.iso286.Member;
import annulus.fit.iso286.SizeBand;
import annulus.fit.iso286.ToleranceGrade;
import java.io.IOException;
import java.io.Reader;
import java.util.List;

/**
 * Reads {@code iso286-grades.csv}, {@code iso286-deviations.csv} and {@code bearing-normal.csv}.
 */
public final class Iso286Files {
  private static final List<String> GRADE_COLUMNS =
      List.of("grade", "over_mm", "up_to_mm", "tolerance_um", "source", "confidence");
  private static final List<String> DEVIATION_COLUMNS =
      List.of(
          "member",
          "letter",
          "grade_from",
          "grade_to",
          "over_mm",
          "up_to_mm",
          "deviation_um",
          "source",
          "confidence");
  private static final List<String> BEARING_COLUMNS =
      List.of("surface", "over_mm", "up_to_mm", "lower_um", "source", "confidence");

  private static final List<String> GRADE_KEY = List.of("grade", "over_mm", "up_to_mm");
  private static final List<String> DEVIATION_KEY =
      List.of("member", "letter", "grade_from", "grade_to", "over_mm", "up_to_mm");
  private static final List<String> BEARING_KEY = List.of("surface", "over_mm", "up_to_mm");

  private Iso286Files() {}

  /**
   * Reads both tables of ISO 286-1.
   *
   * @throws InputRefused with file, line, cell and what is allowed
   * @throws IOException when a file can't be read
   */
  static Iso286Tables read(DataFiles files) throws IOException {
    return BuiltTables.orRead(files, Iso286Tables.class, Iso286Files::readFiles);
  }

  static Iso286Tables readFiles(DataFiles files) throws IOException {
    return tables(
        LaidRows.layers(files, "iso286-grades.csv"),
        LaidRows.layers(files, "iso286-deviations.csv"));
  }

  /**
   * Reads both tables of ISO 286-1.
   *
   * @throws InputRefused with file, line, cell and what is allowed
   */
  public static Iso286Tables tables(
      String gradesFile, Reader grades, String deviationsFile, Reader deviations) {
    return tables(
        List.of(new LaidRows.Text(gradesFile, grades)),
        List.of(new LaidRows.Text(deviationsFile, deviations)));
  }

  private static Iso286Tables tables(List<LaidRows.Text> grades, List<LaidRows.Text> deviations) {
    List<GradeRow> gradeRows =
        PlacedRows.read(grades, GRADE_COLUMNS, GRADE_KEY, Iso286Files::grade);
    List<DeviationRow> deviationRows =
        PlacedRows.read(deviations, DEVIATION_COLUMNS, DEVIATION_KEY, Iso286Files::deviation);
    return PlacedRows.together(
        LaidRows.fileOf(grades) + ", " + LaidRows.fileOf(deviations),
        () -> new Iso286Tables(gradeRows, deviationRows));
  }

  /**
   * Reads the bearing table.
   *
   * @throws InputRefused with file, line, cell and what is allowed
   */
  public static BearingLimits bearings(String file, Reader reader) {
    return bearings(List.of(new LaidRows.Text(file, reader)));
  }

  static BearingLimits bearings(List<LaidRows.Text> layers) {
    List<BearingLimits.Row> rows =
        PlacedRows.read(layers, BEARING_COLUMNS, BEARING_KEY, Iso286Files::bearing);
    return PlacedRows.together(LaidRows.fileOf(layers), () -> new BearingLimits(rows));
  }

  private static GradeRow grade(PlacedRows.Cells cells) {
    return new GradeRow(
        ToleranceGrade.named("grade", cells.text("grade")),
        band(cells),
        cells.number("tolerance_um"),
        cells.provenance());
  }

  private static DeviationRow deviation(PlacedRows.Cells cells) {
    return new DeviationRow(
        cells.word("member", Member.class),
        cells.text("letter"),
        ToleranceGrade.named("grade_from", cells.text("grade_from")),
        ToleranceGrade.named("grade_to", cells.text("grade_to")),
        band(cells),
        cells.number("deviation_um"),
        cells.provenance());
  }

  private static BearingLimits.Row bearing(PlacedRows.Cells cells) {
    return new BearingLimits.Row(
        cells.word("surface", BearingRing.class),
        band(cells),
        cells.number("lower_um"),
        cells.provenance());
  }

  private static SizeBand band(PlacedRows.Cells cells) {
    return new SizeBand(cells.number("over_mm"), cells.number("up_to_mm"));
  }
}
