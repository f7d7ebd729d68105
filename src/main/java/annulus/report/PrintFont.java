package annulus.report;

/** The font of everything that is printed on paper of a fixed size. */
final class PrintFont {
  /**
   * The families and their set size, as they end a declaration {@code font} or {@code font-family}:
   * the last family but one is for where the others are missing, and narrow; a font wider than
   * those named is set smaller, so that the paper still holds everything.
   */
  static final String FAMILIES =
      """
      "Liberation Sans", Arial, Helvetica,
        "DejaVu Sans Condensed", sans-serif; font-size-adjust: 0.519""";

  private PrintFont() {}
}
