package annulus.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.statistics.Statistics;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** The lines of a job list's answers are those that the CSV library writes. */
class CsvLinePropertyTest {
  @Provide
  Arbitrary<List<String>> rows() {
    Arbitrary<String> cell =
        Arbitraries.strings()
            .withChars(" ,;\"'\n\r\t#!$09azAZ-=+@\\|\u00b5\u0000\u2028")
            .ofMaxLength(6);
    return cell.list().ofMinSize(1).ofMaxSize(6);
  }

  @Property(tries = 5000)
  void a_line_is_what_the_csv_library_prints(@ForAll("rows") List<String> cells)
      throws IOException {
    StringBuilder expected = new StringBuilder();
    CSVFormat format = CSVFormat.DEFAULT.builder().setRecordSeparator("\n").get();
    try (CSVPrinter printer = new CSVPrinter(expected, format)) {
      printer.printRecord(cells);
    }
    Statistics.label("quotes").collect(expected.indexOf("\"") >= 0);
    assertEquals(expected.toString(), CsvLine.of(cells));
  }
}
