package annulus.exchange;

import java.io.IOException;
import java.io.Reader;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Rows of a table of {@code data/}, a shop's laid over the program's. A row with a known key takes
 * the place of the one before, any other comes behind. A key that stands twice in one file is left
 * to whoever builds the table of the rows.
 */
final class LaidRows {
  /**
   * One layer of a table.
   *
   * @param file its name, for messages
   * @param reader its text
   */
  record Text(String file, Reader reader) {}

  private LaidRows() {}

  /** The layers of a table, the program's first. */
  static List<Text> layers(DataFiles files, String table) throws IOException {
    List<Text> texts = new ArrayList<>();
    for (DataFiles.Layer layer : files.layers(table)) {
      texts.add(new Text(layer.name(), layer.reader()));
    }
    return texts;
  }

  /** The file that what is wrong with the whole table is told of: a shop's, else the program's. */
  static String fileOf(List<Text> layers) {
    return layers.get(layers.size() - 1).file();
  }

  /**
   * Reads all layers.
   *
   * @param header all columns
   * @param key columns that tell a row from the others
   * @throws InputRefused as {@link CsvTable#rows}
   */
  static List<Node.Obj> read(List<Text> layers, List<String> header, List<String> key)
      throws IOException {
    List<Node.Obj> rows = new ArrayList<>();
    for (Text layer : layers) {
      List<List<Object>> before = new ArrayList<>();
      rows.forEach(r -> before.add(key(r, key)));
      Set<Integer> replaced = new HashSet<>();
      for (Node.Obj row : CsvTable.rows(layer.file(), layer.reader(), header)) {
        int at = before.indexOf(key(row, key));
        if (at >= 0 && replaced.add(at)) {
          rows.set(at, row);
        } else {
          rows.add(row);
        }
      }
    }
    return rows;
  }

  private static List<Object> key(Node.Obj row, List<String> columns) {
    List<Object> key = new ArrayList<>();
    for (String column : columns) {
      Node cell = row.members().get(column);
      key.add(
          cell instanceof Node.Num n
              ? Double.parseDouble(n.written())
              : cell instanceof Node.Text t ? t.value() : "");
    }
    return key;
  }
}
