package annulus.exchange;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;

/** Harms a good file as slips, broken programs and bad will do. */
public final class Damage {
  /** How many times the normal number of cases is run: the profile {@code fuzz} sets it. */
  public static final int TIMES = Integer.getInteger("annulus.fuzz.times", 1);

  private static final List<String> ODD =
      List.of(
          "NaN",
          "-0",
          "-0.0",
          "+0",
          "1e308",
          "1e999",
          "-1e999",
          "1e-400",
          "Infinity",
          "0x10",
          "99999999999999999999",
          "1e2147483648",
          "00012",
          ".5",
          "5.",
          "1,5",
          "\u0660",
          "\u22125",
          "\u0000",
          "\uFEFF",
          "\u2028",
          "\u0085",
          "\r",
          "\n",
          "\r\n",
          "\"",
          "\"\"",
          "'",
          ";",
          "\t",
          ",,,,",
          "=1+1",
          "@SUM(A1)",
          "null",
          "true",
          "{}",
          "[]",
          "#",
          "# decimal=comma",
          "\\",
          "\\u",
          "\\ud800",
          "ı",
          "İ",
          "2027-02-30",
          "9999999999999",
          "-999999999-01-01T00:00Z",
          "24:00",
          "in",
          " F",
          "°C",
          "K",
          "1 in",
          "../../x",
          "%s%n",
          "${x}",
          "<script>");

  private Damage() {}

  /** Some harm done to one of the texts. */
  public static byte[] done(List<byte[]> good, Random random) {
    byte[] bytes = good.get(random.nextInt(good.size()));
    for (int i = random.nextInt(4); i >= 0; i--) {
      bytes = once(bytes, good, random);
    }
    return bytes;
  }

  private static byte[] once(byte[] bytes, List<byte[]> good, Random random) {
    int at = bytes.length == 0 ? 0 : random.nextInt(bytes.length);
    int end = Math.min(bytes.length, at + 1 + random.nextInt(40));
    return switch (random.nextInt(16)) {
      case 0, 1 -> flipped(bytes, at, random);
      case 2 -> joined(bytes, 0, at, new byte[0], bytes, end);
      case 3 -> joined(bytes, 0, end, new byte[0], bytes, at);
      case 4 -> joined(bytes, 0, at, new byte[0], bytes, bytes.length);
      case 5, 6, 7 -> joined(bytes, 0, at, odd(random), bytes, at);
      case 8, 9, 10 -> number(bytes, at, random);
      case 11 -> lineEnds(bytes, random);
      case 12 -> encoded(bytes, random);
      case 13 -> {
        byte[] other = good.get(random.nextInt(good.size()));
        yield joined(bytes, 0, at, new byte[0], other, random.nextInt(other.length));
      }
      case 14 -> joined(bytes, 0, at, nested(random), bytes, at);
      default -> joined(bytes, 0, at, giant(random), bytes, at);
    };
  }

  private static byte[] odd(Random random) {
    return ODD.get(random.nextInt(ODD.size())).getBytes(StandardCharsets.UTF_8);
  }

  private static byte[] flipped(byte[] bytes, int at, Random random) {
    byte[] copy = bytes.clone();
    if (copy.length > 0) {
      copy[at] = (byte) random.nextInt(256);
    }
    return copy;
  }

  private static byte[] joined(
      byte[] head, int from, int to, byte[] middle, byte[] tail, int tailFrom) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(head, from, to - from);
    out.writeBytes(middle);
    out.write(tail, tailFrom, tail.length - tailFrom);
    return out.toByteArray();
  }

  /** The first number after a place becomes another one. */
  private static byte[] number(byte[] bytes, int at, Random random) {
    int from = at;
    while (from < bytes.length && !digit(bytes[from])) {
      from++;
    }
    int to = from;
    while (to < bytes.length && (digit(bytes[to]) || bytes[to] == '.')) {
      to++;
    }
    return joined(bytes, 0, from, odd(random), bytes, to);
  }

  private static boolean digit(byte b) {
    return b >= '0' && b <= '9';
  }

  private static byte[] lineEnds(byte[] bytes, Random random) {
    String[] ends = {"\n", "\r\n", "\r", "\n\n", "\n\r"};
    StringBuilder text = new StringBuilder();
    for (String line : new String(bytes, StandardCharsets.UTF_8).split("\n", -1)) {
      text.append(line).append(ends[random.nextInt(ends.length)]);
    }
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }

  private static byte[] encoded(byte[] bytes, Random random) {
    String text = new String(bytes, StandardCharsets.UTF_8);
    return switch (random.nextInt(4)) {
      case 0 -> text.getBytes(StandardCharsets.UTF_16);
      case 1 -> text.getBytes(StandardCharsets.UTF_16LE);
      case 2 -> text.getBytes(StandardCharsets.ISO_8859_1);
      default -> ("\uFEFF" + text).getBytes(StandardCharsets.UTF_8);
    };
  }

  private static byte[] nested(Random random) {
    String open = new String[] {"[", "{\"a\":", "(", "\"["}[random.nextInt(4)];
    return open.repeat(1 + random.nextInt(random.nextInt(20) == 0 ? 20_000 : 60))
        .getBytes(StandardCharsets.UTF_8);
  }

  private static byte[] giant(Random random) {
    String piece = new String[] {"9", "x", " ", "1,", "\"a\","}[random.nextInt(5)];
    return piece
        .repeat(1 + random.nextInt(random.nextInt(50) == 0 ? 200_000 : 300))
        .getBytes(StandardCharsets.UTF_8);
  }
}
