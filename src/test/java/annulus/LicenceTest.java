package annulus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** Every library, in the program or only in its tests, has a licence that the shop may take. */
class LicenceTest {
  /** What a licence's name must contain, in small letters. */
  private static final List<String> ALLOWED =
      List.of(
          "apache",
          "mit license",
          "the mit",
          "mit",
          "bsd",
          "eclipse public license",
          "epl",
          "mozilla public license, version 2.0",
          "mpl 2.0",
          "unicode");

  @Test
  void only_allowed_licences_appear() throws Exception {
    Map<String, List<String>> found = new TreeMap<>();
    for (String entry : System.getProperty("java.class.path").split(File.pathSeparator, -1)) {
      Path jar = Path.of(entry);
      if (entry.endsWith(".jar") && Files.exists(pom(jar))) {
        found.put(jar.getFileName().toString(), licences(pom(jar)));
      }
    }
    assertTrue(found.size() > 50, found.size() + " libraries");
    List<String> lines = new ArrayList<>();
    found.forEach((jar, names) -> lines.add(jar + ": " + String.join("; ", names)));
    Files.write(Path.of("target/licences.txt"), lines);
    List<String> doubtful =
        found.entrySet().stream()
            .filter(e -> e.getValue().stream().noneMatch(LicenceTest::isAllowed))
            .map(e -> e.getKey() + ": " + e.getValue())
            .toList();
    assertEquals(List.of(), doubtful);
  }

  private static boolean isAllowed(String name) {
    String small = name.toLowerCase(java.util.Locale.ROOT);
    return ALLOWED.stream().anyMatch(small::contains);
  }

  private static Path pom(Path jar) {
    String name = jar.getFileName().toString();
    Path version = jar.toAbsolutePath().getParent();
    String artifact = version.getParent() == null ? "" : version.getParent().getFileName() + "";
    return jar.resolveSibling(
        name.startsWith(artifact)
            ? artifact + "-" + version.getFileName() + ".pom"
            : name.replaceFirst("\\.jar$", ".pom"));
  }

  /** The licences of a pom, or of the nearest parent that names any. */
  private static List<String> licences(Path pom) throws Exception {
    Optional<Path> at = Optional.of(pom);
    while (at.isPresent() && Files.exists(at.get())) {
      Document document = parsed(at.get());
      List<String> names = new ArrayList<>();
      NodeList licences = document.getElementsByTagName("license");
      for (int i = 0; i < licences.getLength(); i++) {
        text((Element) licences.item(i), "name").ifPresent(names::add);
      }
      if (!names.isEmpty()) {
        return names;
      }
      at = parent(document, pom);
    }
    return List.of();
  }

  private static Document parsed(Path pom) throws Exception {
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
    try (var in = Files.newInputStream(pom)) {
      return factory.newDocumentBuilder().parse(in);
    }
  }

  private static Optional<Path> parent(Document document, Path pom) throws IOException {
    NodeList parents = document.getElementsByTagName("parent");
    if (parents.getLength() == 0) {
      return Optional.empty();
    }
    Element parent = (Element) parents.item(0);
    String group = text(parent, "groupId").orElse("").replace('.', '/');
    String artifact = text(parent, "artifactId").orElse("");
    String version = text(parent, "version").orElse("");
    return repository(pom)
        .map(r -> r.resolve(group).resolve(artifact).resolve(version))
        .map(f -> f.resolve(artifact + "-" + version + ".pom"));
  }

  private static Optional<Path> repository(Path pom) {
    Path at = pom.toAbsolutePath();
    while (at != null && !at.endsWith("repository")) {
      at = at.getParent();
    }
    return Optional.ofNullable(at);
  }

  private static Optional<String> text(Element in, String name) {
    NodeList found = in.getElementsByTagName(name);
    return found.getLength() == 0
        ? Optional.empty()
        : Optional.of(found.item(0).getTextContent().strip());
  }
}
