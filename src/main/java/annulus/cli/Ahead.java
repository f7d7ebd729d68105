package annulus.cli;

import annulus.exchange.OrderReader;

/**
 * Prepares on a second core what nearly every command soon needs: a start is mostly preparing.
 * Nothing waits for it that would not have to prepare the same itself.
 */
final class Ahead extends Thread {
  Ahead() {
    super("ahead");
    setDaemon(true);
  }

  @Override
  public void run() {
    OrderReader.prepare();
  }
}
