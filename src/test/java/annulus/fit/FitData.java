package annulus.fit;

import annulus.exchange.Iso286Files;
import annulus.fit.iso286.Iso286Tables;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** The data files as the jar carries them. */
public final class FitData {
  public static final Iso286Tables TABLES =
      Iso286Files.tables(
          "data/iso286-grades.csv",
          open("iso286-grades.csv"),
          "data/iso286-deviations.csv",
          open("iso286-deviations.csv"));
  public static final BearingLimits BEARINGS =
      Iso286Files.bearings("data/bearing-normal.csv", open("bearing-normal.csv"));

  private FitData() {}

  public static Reader open(String name) {
    InputStream stream = FitData.class.getResourceAsStream("/data/" + name);
    return new InputStreamReader(stream, StandardCharsets.UTF_8);
  }

  public static String text(String name) {
    try (InputStream stream = FitData.class.getResourceAsStream("/data/" + name)) {
      return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
