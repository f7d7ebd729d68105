package annulus.exchange;

import java.io.ByteArrayOutputStream;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

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
          "1e5",
          "-273.16",
          "0.1e-320",
          "\u001b[2J",
          "\u202e",
          "\u009b31m",
          "\uff1d1+1",
          "%s%n",
          "${x}",
          "<script>");

  /** A number, or else a word. */
  private static final Pattern VALUE =
      Pattern.compile("(-?[0-9]{1,12}(?:\\.[0-9]{1,12})?)(?![A-Za-z0-9.])|[A-Za-z][A-Za-z0-9_-]*");

  private Damage() {}

  /** Some harm done to one of the texts. */
  public static byte[] done(List<byte[]> good, Random random) {
    byte[] bytes = good.get(random.nextInt(good.size()));
    if (random.nextBoolean()) {
      return gentle(bytes, good, random);
    }
    for (int i = random.nextInt(4); i >= 0; i--) {
      bytes = once(bytes, good, random);
    }
    return bytes;
  }

  /** A few values become others that could stand there, so that the deeper checks are reached. */
  private static byte[] gentle(byte[] bytes, List<byte[]> good, Random random) {
    String text = new String(bytes, StandardCharsets.UTF_8);
    for (int i = random.nextInt(1 + random.nextInt(3)); i >= 0; i--) {
      boolean number = random.nextInt(4) > 0;
      List<MatchResult> values =
          VALUE.matcher(text).results().filter(m -> number == (m.group(1) != null)).toList();
      if (!values.isEmpty()) {
        MatchResult at = values.get(random.nextInt(values.size()));
        String other = at.group(1) == null ? word(good, random) : number(at.group(), random);
        text = text.substring(0, at.start()) + other + text.substring(at.end());
      }
    }
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private static String number(String was, Random random) {
    double value = Double.parseDouble(was);
    double[] factors = {0, -1, 0.1, 0.5, 0.9, 0.99, 0.999, 1.001, 1.01, 1.1, 2, 10};
    boolean whole = was.indexOf('.') < 0;
    if (random.nextInt(4) == 0) {
      return Integer.toString(random.nextInt(2000) - 500);
    }
    double changed =
        whole && random.nextBoolean()
            ? value + random.nextInt(7) - 3
            : value * factors[random.nextInt(factors.length)];
    return new BigDecimal(changed, new MathContext(6)).stripTrailingZeros().toPlainString();
  }

  private static String word(List<byte[]> good, Random random) {
    byte[] other = good.get(random.nextInt(good.size()));
    List<MatchResult> words =
        VALUE
            .matcher(new String(other, StandardCharsets.UTF_8))
            .results()
            .filter(m -> m.group(1) == null)
            .toList();
    return words.isEmpty() ? "" : words.get(random.nextInt(words.size())).group();
  }

  private static byte[] once(byte[] bytes, List<byte[]> good, Random random) {
    int at = bytes.length == 0 ? 0 : random.nextInt(bytes.length);
    int end = Math.min(bytes.length, at + 1 + random.nextInt(40));
    return switch (random.nextInt(20)) {
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
      case 15, 16 -> lines(bytes, random);
      case 17, 18 -> cells(bytes, random);
      default -> joined(bytes, 0, at, giant(random), bytes, at);
    };
  }

  /** A word that nobody expects. */
  public static String oddWord(Random random) {
    return ODD.get(random.nextInt(ODD.size()));
  }

  private static byte[] odd(Random random) {
    return oddWord(random).getBytes(StandardCharsets.UTF_8);
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

  /** A line doubled, taken away, moved or cut off. */
  private static byte[] lines(byte[] bytes, Random random) {
    List<String> lines = new ArrayList<>(parts(bytes, "(?<=\n)"));
    int at = random.nextInt(lines.size());
    String line = lines.get(at);
    switch (random.nextInt(4)) {
      case 0 -> lines.add(at, line);
      case 1 -> lines.remove(at);
      case 2 -> lines.set(at, line.substring(0, random.nextInt(line.length() + 1)));
      default -> lines.add(random.nextInt(lines.size()), lines.remove(at));
    }
    return String.join("", lines).getBytes(StandardCharsets.UTF_8);
  }

  /** Two values change places, or one becomes another odd one. */
  private static byte[] cells(byte[] bytes, Random random) {
    List<String> cells =
        new ArrayList<>(parts(bytes, "(?<=[,;:\\[\\]{}\t\n])|(?=[,;:\\[\\]{}\t\n])"));
    int at = random.nextInt(cells.size());
    int other = random.nextInt(cells.size());
    String value = cells.get(at);
    cells.set(at, random.nextInt(3) == 0 ? ODD.get(random.nextInt(ODD.size())) : cells.get(other));
    cells.set(other, random.nextInt(4) == 0 ? "" : value);
    return String.join("", cells).getBytes(StandardCharsets.UTF_8);
  }

  private static List<String> parts(byte[] bytes, String between) {
    return List.of(new String(bytes, StandardCharsets.UTF_8).split(between, -1));
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
