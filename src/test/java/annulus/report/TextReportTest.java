package annulus.report;

import org.junit.jupiter.api.Test;

class TextReportTest {
  @Test
  void dump() throws Exception {
    StringBuilder b = new StringBuilder();
    for (var e : SampleOrders.all().entrySet()) {
      b.append("=== ")
          .append(e.getKey())
          .append("\n")
          .append(TextReport.of(e.getValue(), SampleOrders.CATALOG, false));
    }
    java.nio.file.Files.writeString(java.nio.file.Path.of("/tmp/report-dump.txt"), b);
    java.nio.file.Files.writeString(
        java.nio.file.Path.of("/tmp/report-why.txt"),
        TextReport.of(SampleOrders.goodFit(), SampleOrders.CATALOG, true));
  }
}
