package annulus.bench;

/** The least a Java program can do. */
public final class OneLine {
  private OneLine() {}

  /** Prints one line. */
  public static void main(String[] args) {
    System.out.println("Use thin lasting compound.");
  }
}
