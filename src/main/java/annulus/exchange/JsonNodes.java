package annulus.exchange;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import java.io.IOException;
import java.io.Reader;
import java.nio.charset.CharacterCodingException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Reads JSON into {@link Node}s that keep line and column. */
final class JsonNodes {
  private static final int MAX_DEPTH = 40;
  private static final long MAX_CHARACTERS = 2_000_000;
  private static final int MAX_VALUES = 200_000;

  private static final JsonFactory FACTORY =
      JsonFactory.builder()
          .streamReadConstraints(
              StreamReadConstraints.builder()
                  .maxNestingDepth(MAX_DEPTH)
                  .maxDocumentLength(MAX_CHARACTERS)
                  .maxStringLength(100_000)
                  .maxNumberLength(100)
                  .build())
          .build();

  private final String file;
  private final JsonParser parser;
  private int values;

  private JsonNodes(String file, JsonParser parser) {
    this.file = file;
    this.parser = parser;
  }

  /**
   * Reads one document.
   *
   * @throws InputRefused when it is not JSON, too deep, too long, repeats a name or goes on after
   *     its end
   */
  static Node read(String file, Reader reader) throws IOException {
    try (JsonParser parser = FACTORY.createParser(ByteOrderMark.skipped(reader))) {
      JsonNodes nodes = new JsonNodes(file, parser);
      JsonToken first = parser.nextToken();
      if (first == null) {
        throw refused(new Node.Place(file, 1, 1), "is empty", "one JSON object");
      }
      Node root = nodes.value(first);
      if (parser.nextToken() != null) {
        throw refused(nodes.here(), "text after the end of the object", "one JSON object");
      }
      return root;
    } catch (JsonProcessingException e) {
      JsonLocation at = e.getLocation();
      Node.Place place =
          at == null
              ? new Node.Place(file, 1, 1)
              : new Node.Place(file, Math.max(1, at.getLineNr()), Math.max(1, at.getColumnNr()));
      throw refused(place, "is not well-formed JSON: " + firstLine(e), "JSON (RFC 8259)");
    } catch (CharacterCodingException e) {
      throw refused(new Node.Place(file, 1, 1), "is not UTF-8 text", "UTF-8");
    }
  }

  private static String firstLine(JsonProcessingException e) {
    String text = e.getOriginalMessage();
    int end = text.indexOf('\n');
    String line = end < 0 ? text : text.substring(0, end);
    return line.replaceAll(":? enable `[^`]*` to allow", "")
        .replaceAll("\\s*\\([^()]*Feature[^()]*\\)", "")
        .replaceAll(",? from `[^`]*`", "")
        .replaceAll("\\s*\\([^()]*`[^`]*`[^()]*\\)", "")
        .replaceAll("`[^`]*\\.([A-Za-z]+)`", "$1");
  }

  private static InputRefused refused(Node.Place place, String problem, String allowed) {
    return new InputRefused(List.of(place.problem("", problem, allowed)));
  }

  private Node.Place here() {
    JsonLocation at = parser.currentTokenLocation();
    return new Node.Place(file, at.getLineNr(), at.getColumnNr());
  }

  private Node value(JsonToken token) throws IOException {
    Node.Place place = here();
    if (++values > MAX_VALUES) {
      throw refused(place, "goes on after " + MAX_VALUES + " values", "fewer values");
    }
    return switch (token) {
      case START_OBJECT -> object(place);
      case START_ARRAY -> array(place);
      case VALUE_STRING -> new Node.Text(place, parser.getText());
      case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> new Node.Num(place, parser.getText());
      case VALUE_TRUE -> new Node.Bool(place, true);
      case VALUE_FALSE -> new Node.Bool(place, false);
      case VALUE_NULL -> new Node.Nothing(place);
      default -> throw refused(place, "unexpected " + token, "a JSON value");
    };
  }

  private Node object(Node.Place place) throws IOException {
    Map<String, Node> members = new LinkedHashMap<>();
    while (parser.nextToken() != JsonToken.END_OBJECT) {
      Node.Place namePlace = here();
      String name = parser.currentName();
      Node value = value(parser.nextToken());
      if (members.put(name, value) != null) {
        throw new InputRefused(List.of(namePlace.problem(name, "stands twice", "each field once")));
      }
    }
    return new Node.Obj(place, members);
  }

  private Node array(Node.Place place) throws IOException {
    List<Node> elements = new ArrayList<>();
    for (JsonToken t = parser.nextToken(); t != JsonToken.END_ARRAY; t = parser.nextToken()) {
      elements.add(value(t));
    }
    return new Node.Arr(place, elements);
  }
}
