package annulus.exchange;

import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** A table of {@code data/}: comma separated, {@code #} comment lines, exact header names. */
final class CsvTable {
  private static final CSVFormat FORMAT =
      CSVFormat.DEFAULT
          .builder()
          .setCommentMarker('#')
          .setIgnoreEmptyLines(true)
          .setTrim(true)
          .get();

  private static final Pattern NUMBER = Pattern.compile("[+-]?[0-9]{1,15}(\\.[0-9]{1,15})?");

  private CsvTable() {}

  /**
   * Reads the rows as objects whose members are the cells, so that one set of readers serves JSON
   * and CSV. Empty cells are absent; cells that are numbers are numbers; the column is the cell's
   * number.
   *
   * @throws InputRefused when a header is missing or unknown or a row has another number of cells
   */
  static List<Node.Obj> rows(String file, Reader reader, List<String> header) throws IOException {
    Problems problems = new Problems();
    List<Node.Obj> rows = new ArrayList<>();
    int lastLine = 0;
    try (CSVParser parser = CSVParser.parse(ByteOrderMark.skipped(reader), FORMAT)) {
      List<String> names = null;
      for (CSVRecord row : parser) {
        lastLine = (int) parser.getCurrentLineNumber();
        int line = Math.max(1, lastLine - lineBreaks(row));
        if (names == null) {
          names = checkedHeader(file, line, row, header, problems);
        } else {
          row(file, line, row, names, problems).ifPresent(rows::add);
        }
      }
      if (names == null) {
        problems.add(
            new Node.Place(file, 1, 1), "", "has no header line", String.join(",", header));
      }
    } catch (CharacterCodingException e) {
      problems.add(new Node.Place(file, 1, 0), "", "is not UTF-8 text", "text saved as UTF-8");
    } catch (UncheckedIOException e) {
      boolean encoding = e.getCause() instanceof CharacterCodingException;
      problems.add(
          new Node.Place(file, lastLine + 1, 0),
          "",
          encoding ? "is not UTF-8 text" : "is not readable CSV from here on: a quote is wrong",
          encoding ? "text saved as UTF-8" : "cells with commas or quotes in quotes (RFC 4180)");
    }
    problems.throwIfAny();
    return rows;
  }

  /** A quoted cell may go over several lines; the row stands where it begins. */
  private static int lineBreaks(CSVRecord row) {
    int breaks = 0;
    for (String cell : row) {
      for (int at = cell.indexOf('\n'); at >= 0; at = cell.indexOf('\n', at + 1)) {
        breaks++;
      }
    }
    return breaks;
  }

  private static List<String> checkedHeader(
      String file, int line, CSVRecord row, List<String> header, Problems problems) {
    List<String> names = row.toList();
    for (int i = 0; i < names.size(); i++) {
      if (!header.contains(names.get(i))) {
        problems.add(
            new Node.Place(file, line, i + 1),
            names.get(i),
            "is not a column here",
            Nearest.allowed(names.get(i), header));
      } else if (names.indexOf(names.get(i)) < i) {
        problems.add(
            new Node.Place(file, line, i + 1),
            names.get(i),
            "column stands twice",
            "each column once");
      }
    }
    for (String name : header) {
      if (!names.contains(name)) {
        problems.add(
            new Node.Place(file, line, 0), name, "column is missing", String.join(",", header));
      }
    }
    return names;
  }

  private static Optional<Node.Obj> row(
      String file, int line, CSVRecord row, List<String> names, Problems problems) {
    if (row.size() != names.size()) {
      problems.add(
          new Node.Place(file, line, 0), "", row.size() + " cells", names.size() + " cells");
      return Optional.empty();
    }
    Map<String, Node> members = new LinkedHashMap<>();
    for (int i = 0; i < names.size(); i++) {
      String cell = row.get(i);
      if (!cell.isEmpty()) {
        members.put(names.get(i), cell(new Node.Place(file, line, i + 1), cell));
      }
    }
    return Optional.of(new Node.Obj(new Node.Place(file, line, 1), members));
  }

  private static Node cell(Node.Place place, String cell) {
    boolean number = NUMBER.matcher(cell).matches();
    return number ? new Node.Num(place, cell, true) : new Node.Text(place, cell);
  }
}
