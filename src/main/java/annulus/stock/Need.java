package annulus.stock;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * What one job wants from the cabinet.
 *
 * @param job its reference
 * @param line its line in the job list
 * @param day when the joint is closed
 * @param options what would do, the best first whether it is in the cabinet or not; empty where the
 *     answer to the job needs no compound
 * @param answer what was answered to the job, in a word
 */
public record Need(String job, long line, LocalDate day, List<Option> options, String answer) {
  public Need {
    options = List.copyOf(options);
  }

  /**
   * One way to do a job.
   *
   * @param item id of the compound class
   * @param amount compound drawn
   * @param primer id of the primer it goes with; empty: none
   * @param primerAmount primer drawn
   * @param handBack earliest safe hand-back; empty: none can be promised
   * @param strengthMPa likely shear strength of the class, MPa
   * @param lasting whether it is not meant to come apart again
   */
  public record Option(
      String item,
      Millilitres amount,
      Optional<String> primer,
      Millilitres primerAmount,
      Optional<Instant> handBack,
      double strengthMPa,
      boolean lasting) {}
}
