package annulus.advice;

import annulus.catalog.CompoundClass;
import java.time.LocalDate;
import java.util.List;

/**
 * What a shop's observations made of a class.
 *
 * @param shipped the class as it was
 * @param learned the class as this shop should use it
 * @param time what is believed of the time factor
 * @param timeFactor factor on the fixture time that policy allows
 * @param laterFactor factor on the later stages that policy allows
 * @param strengthLn mean of ln(strength factor)
 * @param strengthSigmaLn its standard deviation
 * @param strengthFactor factor on the likely strength that policy allows
 * @param joints joints whose fixture was seen
 * @param pulls pull tests that counted
 * @param first first date
 * @param last last date
 * @param held what the policy held back, in words
 * @param notCounted observations that could not be counted, in words
 * @param lookAt joints slower or weaker than the shipped data allow for, in words
 */
public record Learned(
    CompoundClass shipped,
    CompoundClass learned,
    FactorPosterior time,
    double timeFactor,
    double laterFactor,
    double strengthLn,
    double strengthSigmaLn,
    double strengthFactor,
    int joints,
    int pulls,
    LocalDate first,
    LocalDate last,
    List<String> held,
    List<String> notCounted,
    List<String> lookAt) {
  public Learned {
    held = List.copyOf(held);
    notCounted = List.copyOf(notCounted);
    lookAt = List.copyOf(lookAt);
  }
}
