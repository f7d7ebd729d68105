package annulus.exchange;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;

/** The encoding of bytes as {@link LoggerSource} tells it of a file. */
final class LoggerBytes {
  private LoggerBytes() {}

  static Charset charset(byte[] b) {
    if (b.length > 1 && (b[0] & 0xFF) == 0xFF && (b[1] & 0xFF) == 0xFE) {
      return StandardCharsets.UTF_16LE;
    }
    if (b.length > 1 && (b[0] & 0xFF) == 0xFE && (b[1] & 0xFF) == 0xFF) {
      return StandardCharsets.UTF_16BE;
    }
    try (var reader = DataFiles.utf8(new ByteArrayInputStream(b))) {
      reader.transferTo(java.io.Writer.nullWriter());
      return StandardCharsets.UTF_8;
    } catch (IOException e) {
      return StandardCharsets.ISO_8859_1;
    }
  }
}
