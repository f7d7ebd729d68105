package annulus.bench;

import java.io.IOException;
import java.io.Reader;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.apache.commons.csv.CSVRecord;

/** What reading a table costs, and writing it again, when nothing is thought about it. */
public final class BareCsv {
  private BareCsv() {}

  /** {@code read IN} or {@code copy IN OUT}. */
  public static void main(String[] args) throws IOException {
    long cells =
        args[0].equals("read") ? read(Path.of(args[1])) : copy(Path.of(args[1]), Path.of(args[2]));
    System.out.println(cells + " cells");
  }

  private static CSVFormat format() {
    return CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
  }

  private static long read(Path in) throws IOException {
    long cells = 0;
    try (Reader reader = Files.newBufferedReader(in);
        var parser = format().parse(reader)) {
      for (CSVRecord row : parser) {
        cells += row.size();
      }
    }
    return cells;
  }

  private static long copy(Path in, Path out) throws IOException {
    long cells = 0;
    try (Reader reader = Files.newBufferedReader(in);
        Writer writer = Files.newBufferedWriter(out);
        var parser = format().parse(reader);
        CSVPrinter printer = CSVFormat.RFC4180.print(writer)) {
      for (CSVRecord row : parser) {
        printer.printRecord(row);
        cells += row.size();
      }
    }
    return cells;
  }
}
