package annulus.store;

import annulus.stock.Millilitres;
import annulus.stock.Movement;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;

/** A till of its own process: records movements and says each one once it is confirmed. */
final class LedgerChild {
  private LedgerChild() {}

  static Movement use(String id) {
    return new Movement(
        id,
        Instant.parse("2026-11-25T09:00:00Z"),
        LocalDate.of(2026, 11, 25),
        Movement.Kind.USE,
        "Halden",
        "job of " + id,
        "007",
        "medium-lasting",
        Millilitres.of(0.001),
        "the longer a line is the likelier it is cut off: " + "x".repeat(120),
        "");
  }

  static Movement receive(double ml) {
    return new Movement(
        "first",
        Instant.parse("2026-11-25T08:00:00Z"),
        LocalDate.of(2026, 11, 25),
        Movement.Kind.RECEIVE,
        "Orla",
        "",
        "007",
        "medium-lasting",
        Millilitres.of(ml),
        "",
        "");
  }

  public static void main(String[] args) throws IOException {
    LedgerFile ledger = new LedgerFile(Path.of(args[0]));
    int count = Integer.parseInt(args[2]);
    for (int i = 0; i < count; i++) {
      String id = args[1] + "-" + i;
      ledger.append(use(id));
      System.out.write((id + "\n").getBytes(StandardCharsets.UTF_8));
      System.out.flush();
    }
  }
}
