package annulus.measure;

import annulus.quantity.Check;

/**
 * The choices of the measurement model that are not laws of nature ({@code data/form-limits.csv}).
 *
 * @param ovalNoteUm ovality above which it is noted, µm on the diameter
 * @param taperNoteUm taper above which it is noted, µm on the diameter
 * @param repeatNoteUm disagreement at one place above which it is noted, µm on the diameter
 * @param singleReadingSteps half-width of the default repeatability of one reading, in resolution
 *     steps
 * @param dominantShare share of the variance above which the instrument is said to rule, 0 to 1
 * @param instrumentExpansionPerK1e6 expansion coefficient of the instruments, 1e-6/K
 * @param mostReadings the most readings per member that are asked for
 */
public record FormLimits(
    double ovalNoteUm,
    double taperNoteUm,
    double repeatNoteUm,
    double singleReadingSteps,
    double dominantShare,
    double instrumentExpansionPerK1e6,
    int mostReadings) {
  public FormLimits {
    Check.within("oval-note", ovalNoteUm, 0, 1000, "µm");
    Check.within("taper-note", taperNoteUm, 0, 1000, "µm");
    Check.within("repeat-note", repeatNoteUm, 0, 1000, "µm");
    Check.within("single-reading-steps", singleReadingSteps, 0.5, 10, "steps");
    Check.within("dominant-share", dominantShare, 0, 1, "");
    Check.within("instrument-expansion", instrumentExpansionPerK1e6, 0, 50, "1e-6/K");
    Check.within("most-readings", mostReadings, 2, 1000, "");
  }
}
