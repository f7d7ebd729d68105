package annulus.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.Advice;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** The three pictures, read back by an XML parser. */
class PicturesTest {
  static Document parsed(String xml) throws Exception {
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
    return factory.newDocumentBuilder().parse(new InputSource(new StringReader(xml)));
  }

  private static List<String> pictures(Advice advice) {
    List<String> all = new ArrayList<>();
    all.add(GapSection.of(advice, SampleOrders.CATALOG));
    all.add(GapDistribution.of(advice));
    CureChart.of(advice).ifPresent(all::add);
    return all;
  }

  private static String words(Document svg) {
    StringBuilder words = new StringBuilder();
    NodeList texts = svg.getElementsByTagName("text");
    for (int i = 0; i < texts.getLength(); i++) {
      words.append(texts.item(i).getTextContent()).append('\n');
    }
    return words.toString();
  }

  @Test
  void every_picture_is_well_formed_titled_and_fetches_nothing() throws Exception {
    for (Map.Entry<String, Advice> sample : SampleOrders.all().entrySet()) {
      for (String picture : pictures(sample.getValue())) {
        Element svg = parsed(picture).getDocumentElement();
        assertEquals("svg", svg.getTagName(), sample.getKey());
        assertEquals("img", svg.getAttribute("role"));
        assertEquals(1, svg.getElementsByTagName("title").getLength());
        assertEquals(1, svg.getElementsByTagName("desc").getLength());
        assertFalse(picture.contains("href") || picture.contains("url("));
        assertFalse(picture.contains("NaN") || picture.contains("Infinity"), picture);
      }
    }
  }

  @Test
  void labels_and_marks_stay_inside_the_picture() throws Exception {
    for (Map.Entry<String, Advice> sample : SampleOrders.all().entrySet()) {
      for (String picture : pictures(sample.getValue())) {
        Element svg = parsed(picture).getDocumentElement();
        double width = Double.parseDouble(svg.getAttribute("width").replace("mm", ""));
        double height = Double.parseDouble(svg.getAttribute("height").replace("mm", ""));
        NodeList all = svg.getElementsByTagName("*");
        for (int i = 0; i < all.getLength(); i++) {
          Element element = (Element) all.item(i);
          for (String name : List.of("x", "x1", "x2")) {
            inside(element, name, width, sample.getKey());
          }
          for (String name : List.of("y", "y1", "y2")) {
            inside(element, name, height, sample.getKey());
          }
        }
      }
    }
  }

  private static void inside(Element element, String name, double most, String sample) {
    if (element.hasAttribute(name)) {
      double value = Double.parseDouble(element.getAttribute(name));
      assertTrue(value >= 0 && value <= most, sample + " " + element.getTextContent() + value);
    }
  }

  @Test
  void the_section_labels_radial_and_diametral_and_states_its_scales() throws Exception {
    String words = words(parsed(GapSection.of(SampleOrders.goodFit(), SampleOrders.CATALOG)));
    assertTrue(words.contains("radial gap (per side)\n30.0 ± 3.4 µm"), words);
    assertTrue(words.contains("diametral clearance (across)\n60.0 ± 6.7 µm"), words);
    assertTrue(words.contains("gap drawn 100 : 1, parts 1 : 2.5"), words);
  }

  @Test
  void the_film_is_as_thick_on_paper_as_the_stated_scale_says() throws Exception {
    Document svg = parsed(GapSection.of(SampleOrders.goodFit(), SampleOrders.CATALOG));
    NodeList shapes = svg.getElementsByTagName("rect");
    List<Double> films = new ArrayList<>();
    for (int i = 0; i < shapes.getLength(); i++) {
      Element shape = (Element) shapes.item(i);
      if (shape.getAttribute("fill").equals("#8a8a8a")) {
        films.add(Double.parseDouble(shape.getAttribute("height")));
      }
    }
    // 30 µm at 100 : 1 is 3 mm
    assertEquals(List.of(3.0, 3.0), films);
  }

  @Test
  void the_distribution_has_both_scales_and_every_class() throws Exception {
    for (Advice advice : SampleOrders.all().values()) {
      String words = words(parsed(GapDistribution.of(advice)));
      assertTrue(words.contains("radial, µm") && words.contains("diametral, µm"));
      advice.table().forEach(v -> assertTrue(words.contains(ClassTexts.name(v.compound()))));
    }
  }

  @Test
  void the_cure_chart_marks_fixture_full_and_hand_back_and_is_missing_for_a_no() throws Exception {
    String words = words(parsed(CureChart.of(SampleOrders.goodFit()).orElseThrow()));
    assertTrue(words.contains("fixture") && words.contains("full cure"), words);
    assertTrue(words.contains("HAND BACK Mon 30 Nov 00:09"), words);
    for (Advice advice : SampleOrders.all().values()) {
      boolean bonds = advice.decision().kind() == Advice.Kind.USE_COMPOUND;
      assertEquals(bonds, CureChart.of(advice).isPresent());
    }
  }
}
