package annulus.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.Chars;
import org.junit.jupiter.api.Test;

class HtmlTest {

  @Test
  void markup_in_text_is_shown_and_not_run() {
    assertEquals(
        "&lt;script&gt;alert(\"x\" &amp; 'y')&lt;/script&gt;",
        Html.text("<script>alert(\"x\" & 'y')</script>"));
  }

  @Test
  void an_attribute_cannot_be_left() {
    assertEquals("&quot; onclick=&#39;x&#39;&#10;", Html.attr("\" onclick='x'\n"));
  }

  @Test
  void what_html_does_not_allow_becomes_a_replacement_character() {
    assertEquals("a\uFFFDb\uFFFDc\uFFFD", Html.text("a\u0000b\u0085c\uD800"));
    assertEquals("ü 水 🔩\n", Html.text("ü 水 🔩\n"));
  }

  @Property
  void escaped_text_has_no_markup_and_undoes_to_the_same(
      @ForAll @Chars({'<', '>', '&', '"', '\'', 'a', 'm', 'p', ';', 'l', 't', '#', ' '})
          String value) {
    String attribute = Html.attr(value);
    assertFalse(attribute.matches("(?s).*[<>\"'].*"), attribute);
    String undone =
        attribute
            .replace("&lt;", "<")
            .replace("&gt;", ">")
            .replace("&quot;", "\"")
            .replace("&#39;", "'")
            .replace("&amp;", "&");
    assertEquals(value, undone);
  }
}
