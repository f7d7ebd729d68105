package annulus.stock;

import java.time.LocalDate;
import java.util.Optional;

/**
 * Whether a safety data sheet is on file.
 *
 * @param onFile whether there is one
 * @param dated its date, if known
 */
public record SafetySheet(boolean onFile, Optional<LocalDate> dated) {
  /** None on file. */
  public static final SafetySheet NONE = new SafetySheet(false, Optional.empty());

  /** On file, its date not known. */
  public static final SafetySheet UNDATED = new SafetySheet(true, Optional.empty());
}
