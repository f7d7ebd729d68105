package annulus.web;

import static annulus.web.RunningBoard.act;
import static annulus.web.RunningBoard.json;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.store.Databases;
import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Two joints called the same are not entered without a word, and can be told apart on paper. */
class SameReferenceTest {
  private static final String JOINT =
      "&who=Mira&title=a+sleeve&engagement=11&boreMaterial=steel-plain"
          + "&partMaterial=steel-alloy&boreInstrument=bore-gauge-dial&bore-1=41.966"
          + "&partInstrument=outside-micrometer&part-1=41.918&temperature=18&act=book";

  @TempDir Path folder;

  static List<String> databases() {
    return Databases.names();
  }

  private static int jobs(RunningBoard board) {
    return json(board.get("/api/jobs")).get("jobs").size();
  }

  @ParameterizedTest
  @MethodSource("databases")
  void the_bench_warns_and_asks_before_it_enters_the_second(String name) {
    try (RunningBoard board = RunningBoard.on(Databases.fresh(name, folder))) {
      board.entered("DUP");
      String path = board.form("/bench/new", "").headers().firstValue("Location").orElseThrow();
      String form = "version=1&reference=dup" + JOINT;
      String typed = board.form(path + "/save", form).body();
      assertTrue(typed.contains("On the board already: DUP a cup (booked)."), typed);
      HttpResponse<String> asked = board.form(path, form.replace("version=1", "version=2"));
      assertEquals(422, asked.statusCode());
      assertTrue(asked.body().contains("name=\"twice\" value=\"dup\">"), asked.body());
      assertEquals(1, jobs(board));
      String other = form.replace("version=1", "version=3") + "&twice=another";
      assertEquals(422, board.form(path, other).statusCode(), "ticked for another reference");
      String meant = form.replace("version=1", "version=4") + "&twice=dup";
      assertEquals(303, board.form(path, meant).statusCode());
      assertEquals(2, jobs(board));
    }
  }

  @Test
  void page_interface_and_tag_tell_the_two_apart() {
    try (RunningBoard board = RunningBoard.on("jdbc:sqlite:" + folder.resolve("board.db"))) {
      JsonNode one = board.entered("DUP");
      assertEquals("[]", one.get("sameReference").toString());
      JsonNode two = json(board.post("/api/jobs", board.newJob("DUP").put("title", "a sleeve")));
      assertEquals("[\"" + one.get("id").asText() + "\"]", two.get("sameReference").toString());
      String page = board.get("/job/" + one.get("id").asText()).body();
      assertTrue(page.contains("/job/" + two.get("id").asText() + "\">DUP a sleeve (booked)"));
      assertTrue(page.contains("it may be for either"), page);
      two = json(board.act(two, "closed", act(two, "Mira")));
      String first = two.get("promisableAt").asText();
      two = json(board.act(two, "promise", act(two, "Ede").put("promised", first)));
      String tag = board.get("/job/" + two.get("id").asText() + "/tag").body();
      assertTrue(tag.contains("<p class=\"title\">a sleeve</p>"), tag);
      board.clock.set(java.time.Instant.parse(two.get("readyAt").asText()));
      for (String to : List.of("checked", "collected")) {
        two = json(board.act(two, "state", act(two, "Ede").put("to", to)));
      }
      assertFalse(board.get("/job/" + one.get("id").asText()).body().contains("Called the same"));
    }
  }
}
