package annulus.report;

import annulus.measure.Note;

/** The notes to a measured diameter in words. */
final class NoteTexts {
  private NoteTexts() {}

  static String text(Note note) {
    return switch (note) {
      case ONE_READING ->
          "One reading only: form and repeatability are not seen, a default stands in.";
      case ANGLES_NOT_GIVEN -> "Some readings have no angle: their spread may be form or noise.";
      case TWO_POINT_BLIND_TO_ODD_LOBES ->
          "Two contacts never see three, five or seven lobes: round by them proves nothing.";
      case THREE_POINT_BLIND_TO_OVAL -> "Three contacts never see an oval.";
      case OVAL -> "Oval: largest and smallest diameter at one depth differ beyond the limit.";
      case TAPERED -> "Tapered: the diameters at different depths differ beyond the limit.";
      case JAWS_READ_SMALL ->
          "Flat inside jaws read a bore small: half of the possible error was added.";
      case READINGS_DISAGREE ->
          "Readings of one place differ more than the instrument explains: measure again.";
      case READINGS_SPREAD ->
          "Readings differ more than the instrument explains: form, or a slip. Read it again.";
      case INSTRUMENT_RULES -> "The instrument's own error rules: more readings help little.";
    };
  }
}
