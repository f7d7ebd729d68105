package annulus.exchange;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * A logger's file on disk as text that can be opened again. The encoding is told by the byte order
 * mark; without one it is UTF-8 if all of it is, else ISO 8859-1, in which the degree sign of older
 * programs is written.
 */
public final class LoggerSource {
  private static final int BLOCK = 65_536;

  private LoggerSource() {}

  /**
   * Finds the encoding and gives a way to open the file.
   *
   * @throws IOException when the file can't be read
   */
  public static Supplier<Reader> of(Path path) throws IOException {
    Charset charset = charset(path);
    return () -> {
      try {
        return new InputStreamReader(
            new BufferedInputStream(Files.newInputStream(path), BLOCK), charset);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    };
  }

  /** The text of a file's bytes, its encoding told in the same way. */
  public static String text(byte[] bytes) {
    Optional<Charset> marked = marked(bytes);
    if (marked.isPresent()) {
      return new String(bytes, marked.get());
    }
    try {
      return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException e) {
      return new String(bytes, StandardCharsets.ISO_8859_1);
    }
  }

  /** The encoding of a file. */
  static Charset charset(Path path) throws IOException {
    try (InputStream in = Files.newInputStream(path)) {
      Optional<Charset> marked = marked(in.readNBytes(2));
      if (marked.isPresent()) {
        return marked.get();
      }
    }
    return isUtf8(path) ? StandardCharsets.UTF_8 : StandardCharsets.ISO_8859_1;
  }

  /** The encoding that the byte order mark tells; empty without one of two bytes. */
  private static Optional<Charset> marked(byte[] head) {
    boolean little = head.length > 1 && head[0] == (byte) 0xFF && head[1] == (byte) 0xFE;
    boolean big = head.length > 1 && head[0] == (byte) 0xFE && head[1] == (byte) 0xFF;
    return little || big
        ? Optional.of(little ? StandardCharsets.UTF_16LE : StandardCharsets.UTF_16BE)
        : Optional.empty();
  }

  private static boolean isAscii(byte[] block, int size) {
    int bits = 0;
    for (int i = 0; i < size; i++) {
      bits |= block[i];
    }
    return bits >= 0;
  }

  /** Whether every byte can be read; a block of plain characters, as nearly all are, surely can. */
  private static boolean isUtf8(Path path) throws IOException {
    CharsetDecoder decoder = StandardCharsets.UTF_8.newDecoder();
    CharBuffer unused = CharBuffer.allocate(BLOCK);
    byte[] block = new byte[BLOCK];
    int begun = 0; // bytes of a character that goes on in the next block
    try (InputStream in = Files.newInputStream(path)) {
      for (int read = in.read(block); read >= 0; read = in.read(block, begun, BLOCK - begun)) {
        int size = begun + read;
        if (begun > 0 || !isAscii(block, size)) {
          ByteBuffer bytes = ByteBuffer.wrap(block, 0, size);
          if (decoder.decode(bytes, unused.clear(), false).isError()) {
            return false;
          }
          begun = bytes.remaining();
          System.arraycopy(block, size - begun, block, 0, begun);
        }
      }
    }
    return begun == 0;
  }
}
