package annulus.cure;

/** Takes the linear pieces of a temperature history one at a time, in the order of time. */
@FunctionalInterface
public interface PieceConsumer {
  /**
   * One piece in which the temperature runs straight from one end to the other.
   *
   * @param startSeconds start, s
   * @param startC temperature at the start, °C
   * @param endSeconds end, s, after the start
   * @param endC temperature at the end, °C
   */
  void piece(double startSeconds, double startC, double endSeconds, double endC);
}
