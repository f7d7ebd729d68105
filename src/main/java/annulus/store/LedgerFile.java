package annulus.store;

import annulus.exchange.InputRefused;
import annulus.exchange.LedgerLines;
import annulus.exchange.PlacedProblem;
import annulus.stock.Ledger;
import annulus.stock.Movement;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.locks.ReentrantLock;

/**
 * The ledger on disk: one line a movement, only ever added to. A movement is recorded once its
 * line, line end included, is written in one piece and synced; only then does {@link #append}
 * return. Whatever was cut off in the middle of a line was never acknowledged: it is reported, not
 * counted, and overwritten by the next movement. Any other damage, and an end that can't be the
 * beginning of a line, stops the ledger.
 */
public final class LedgerFile {
  private static final int MOST_BYTES = 256_000_000;

  /** A file lock belongs to the whole process, so threads of one process wait here. */
  private static final ReentrantLock THIS_PROCESS = new ReentrantLock();

  private final Path path;

  /**
   * @param path where the ledger is or will be
   */
  public LedgerFile(Path path) {
    this.path = path;
  }

  /**
   * What a ledger file holds.
   *
   * @param ledger every whole movement
   * @param torn what is said about a line cut off at the end, if there is one
   */
  public record Reading(Ledger ledger, Optional<PlacedProblem> torn) {}

  /** What became of movements that were to be recorded. */
  public enum Outcome {
    RECORDED,
    /** It was there before; nothing was written. */
    ALREADY_THERE
  }

  /**
   * Reads the ledger; a file that does not exist is an empty ledger. Waits for whoever is writing,
   * so that a line half written is not taken for one cut off.
   *
   * @throws InputRefused when a line is damaged
   * @throws IOException when it can't be read
   */
  public Reading read() throws IOException {
    if (!Files.exists(path)) {
      return new Reading(Ledger.EMPTY, Optional.empty());
    }
    THIS_PROCESS.lock();
    try (FileChannel channel = FileChannel.open(path, StandardOpenOption.READ);
        FileLock lock = channel.lock(0, Long.MAX_VALUE, true)) {
      requireValid(lock);
      Parsed parsed = parsed(whole(channel));
      return new Reading(parsed.ledger, parsed.torn);
    } finally {
      THIS_PROCESS.unlock();
    }
  }

  /**
   * Records one movement, safe against a crash once it returns.
   *
   * @throws annulus.quantity.InvalidValue when it takes more than is left, its lot is of another
   *     class or held back, or its id is taken
   * @throws InputRefused when the ledger is damaged
   * @throws IOException when it can't be written; then nothing is recorded
   */
  public Outcome append(Movement movement) throws IOException {
    return write(List.of(movement), true).isNew() > 0 ? Outcome.RECORDED : Outcome.ALREADY_THERE;
  }

  /**
   * What came of movements that were recorded elsewhere.
   *
   * @param isNew how many were not here before
   * @param openedTwice opening balances left out, because the lot has one here
   * @param otherItem movements of another class than their lot has here: what came in was left out,
   *     what was used is taken over, so that a recall finds it
   */
  public record Merged(int isNew, List<Movement> openedTwice, List<Movement> otherItem) {
    public Merged {
      openedTwice = List.copyOf(openedTwice);
      otherItem = List.copyOf(otherItem);
    }
  }

  /**
   * Takes over movements recorded elsewhere, in one piece; those already there are left alone. What
   * was used elsewhere was used, so no use is refused. A lot's opening balance counts once.
   *
   * @throws annulus.quantity.InvalidValue when an id stands for another movement here, or a lot
   *     would have more than the largest container holds
   * @throws IOException when it can't be written; then nothing is recorded
   */
  public Merged merge(List<Movement> movements) throws IOException {
    return write(movements, false);
  }

  private Merged write(List<Movement> movements, boolean checkLeft) throws IOException {
    THIS_PROCESS.lock();
    try (FileChannel channel = open();
        FileLock lock = channel.lock()) {
      requireValid(lock);
      return writeLocked(channel, movements, checkLeft);
    } finally {
      THIS_PROCESS.unlock();
    }
  }

  private void requireValid(FileLock lock) throws IOException {
    if (!lock.isValid()) {
      throw new IOException(path + " can't be locked");
    }
  }

  private FileChannel open() throws IOException {
    boolean fresh = !Files.exists(path);
    FileChannel channel =
        FileChannel.open(
            path, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
    if (fresh) {
      syncFolder();
    }
    return channel;
  }

  /** The new file's name must survive a crash too; not every system can sync a folder. */
  private void syncFolder() {
    Path folder = path.toAbsolutePath().getParent();
    try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    } catch (IOException e) {
      return;
    }
  }

  private Merged writeLocked(FileChannel channel, List<Movement> movements, boolean checkLeft)
      throws IOException {
    Parsed parsed = parsed(whole(channel));
    Ledger ledger = parsed.ledger;
    StringBuilder text = new StringBuilder(parsed.lacksLineEnd ? "\n" : "");
    List<Movement> openedTwice = new ArrayList<>();
    List<Movement> otherItem = new ArrayList<>();
    int count = 0;
    for (Movement movement : movements) {
      if (!checkLeft && ledger.isOtherItem(movement)) {
        otherItem.add(movement);
        if (movement.change().isPositive() && movement.takesBack().isEmpty()) {
          continue;
        }
      }
      if (checkLeft) {
        ledger.requireItem(movement);
        ledger.requireLeft(movement);
        ledger.requireNotHeldBack(movement);
        ledger.requireTakesBack(movement);
      } else if (ledger.opensAgain(movement)) {
        openedTwice.add(movement);
        continue;
      }
      boolean known = ledger.has(movement.id());
      ledger = ledger.with(movement);
      if (!known) {
        text.append(LedgerLines.line(movement)).append('\n');
        count++;
      }
    }
    if (!checkLeft) {
      ledger.requireRoom(parsed.ledger);
    }
    if (count > 0) {
      put(channel, parsed.wholeBytes, text.toString().getBytes(StandardCharsets.UTF_8));
    }
    return new Merged(count, openedTwice, otherItem);
  }

  private static void put(FileChannel channel, long from, byte[] bytes) throws IOException {
    try {
      channel.truncate(from);
      ByteBuffer buffer = ByteBuffer.wrap(bytes);
      long at = from;
      while (buffer.hasRemaining()) {
        at += channel.write(buffer, at);
      }
      channel.force(true);
    } catch (IOException e) {
      takeBack(channel, from, e);
      throw e;
    }
  }

  private static void takeBack(FileChannel channel, long from, IOException cause) {
    try {
      channel.truncate(from);
      channel.force(true);
    } catch (IOException e) {
      cause.addSuppressed(e);
    }
  }

  private static byte[] whole(FileChannel channel) throws IOException {
    long size = channel.size();
    if (size > MOST_BYTES) {
      throw new IOException("the ledger is larger than 256 MB; begin a new one");
    }
    ByteBuffer buffer = ByteBuffer.allocate((int) size);
    int more = 0;
    while (buffer.hasRemaining() && more >= 0) {
      more = channel.read(buffer, buffer.position());
    }
    byte[] bytes = new byte[buffer.position()];
    buffer.flip().get(bytes);
    return bytes;
  }

  /** A file taken apart; the last line counts without its line end if its checksum is right. */
  private Parsed parsed(byte[] bytes) {
    List<Movement> movements = new ArrayList<>();
    Parsed parsed = new Parsed();
    int from = 0;
    int number = 1;
    while (from < bytes.length) {
      int end = from;
      while (end < bytes.length && bytes[end] != '\n') {
        end++;
      }
      boolean last = end == bytes.length;
      Optional<String> line = text(bytes, from, end);
      if (last && line.filter(LedgerLines::isWhole).isEmpty() && canBeCutOff(bytes, from)) {
        parsed.torn = Optional.of(torn(number, bytes.length - from));
        break;
      }
      movements.add(LedgerLines.movement(path.toString(), number, line.orElse("")));
      parsed.lacksLineEnd = last;
      from = last ? end : end + 1;
      parsed.wholeBytes = from;
      number++;
    }
    parsed.ledger = Ledger.of(movements);
    return parsed;
  }

  /** Read byte by byte, as the cut may lie within a letter. */
  private static boolean canBeCutOff(byte[] bytes, int from) {
    return LedgerLines.canBeCutOff(
        new String(bytes, from, bytes.length - from, StandardCharsets.ISO_8859_1));
  }

  private PlacedProblem torn(int line, int bytes) {
    return new PlacedProblem(
        path.toString(),
        line,
        0,
        "",
        "the last line is cut off after "
            + bytes
            + " bytes; it was never confirmed and is not counted",
        "record that movement again if it took place");
  }

  private static Optional<String> text(byte[] bytes, int from, int end) {
    try {
      return Optional.of(
          StandardCharsets.UTF_8
              .newDecoder()
              .decode(ByteBuffer.wrap(bytes, from, end - from))
              .toString());
    } catch (CharacterCodingException e) {
      return Optional.empty();
    }
  }

  private static final class Parsed {
    private Ledger ledger = Ledger.EMPTY;
    private long wholeBytes;
    private boolean lacksLineEnd;
    private Optional<PlacedProblem> torn = Optional.empty();
  }
}
