package annulus.web;

import static annulus.web.RunningBoard.json;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A decimal comma is taken at the bench where it can't be one between thousands, and shown back.
 */
class DecimalCommaTest extends OneBoard {
  private static final String JOINT =
      "&who=Mira&reference=HL-7&engagement=11,5&boreMaterial=steel-plain"
          + "&partMaterial=steel-alloy&boreInstrument=bore-gauge-dial&bore-1=41,966"
          + "&partInstrument=outside-micrometer&temperature=18,5&part-1=41.918";

  private String bench() {
    return board.form("/bench/new", "").headers().firstValue("Location").orElseThrow();
  }

  @Test
  void sizes_and_temperatures_with_a_comma_are_read_and_shown_back() {
    String bench = bench();
    String typed = board.form(bench + "/save", "version=1" + JOINT).body();
    assertTrue(typed.contains("Comma read as point: "), typed);
    assertTrue(typed.contains("Length they share 11.5"), typed);
    assertTrue(typed.contains("Bore, reading 1 41.966"), typed);
    assertTrue(typed.contains("Temperature where it cures 18.5"), typed);
    assertTrue(board.get(bench).body().contains("name=\"bore-1\" value=\"41.966\""));
    String job =
        board.form(bench, "version=2&act=book" + JOINT).headers().firstValue("Location").get();
    JsonNode order = json(board.get("/api/jobs/" + job.substring("/job/".length()))).get("order");
    assertEquals("41.966", order.at("/bore/readingsMm/0").asText());
    assertEquals("11.5", order.get("engagementMm").asText());
    assertEquals("18.5", order.get("temperatureC").asText());
  }

  @Test
  void a_load_that_may_be_a_thousand_is_asked_about_and_not_guessed() {
    String bench = bench();
    String load = JOINT + "&repeats=static&axialN=";
    String unsure = board.form(bench + "/save", "version=1" + load + "1,500").body();
    assertTrue(unsure.contains("Push or pull along the bore"), unsure);
    assertTrue(unsure.contains("a decimal point: 1.500, or 1500 if that is meant"), unsure);
    String sure = board.form(bench + "/save", "version=2" + load + "1500,5").body();
    assertTrue(sure.contains("Push or pull along the bore 1500.5"), sure);
    assertFalse(sure.contains("Please look again"), sure);
    String small = board.form(bench + "/save", "version=3" + load + "0,125").body();
    assertTrue(small.contains("Push or pull along the bore 0.125"), small);
  }

  @ParameterizedTest
  @ValueSource(strings = {"41,96,6", "41.9,66", "1.041,966", "41,", ",", "4,1 966"})
  void what_is_no_single_decimal_comma_is_refused(String reading) {
    String form = JOINT.replace("bore-1=41,966", "bore-1=" + reading.replace(" ", "+"));
    String said = board.form(bench() + "/save", "version=1" + form).body();
    assertTrue(said.contains("Please look again"), said);
  }

  @Test
  void a_name_keeps_its_comma() {
    String said =
        board.form(bench() + "/save", "version=1" + JOINT + "&title=cup+1,5&bore=f,3").body();
    assertFalse(said.contains("What is it?"), said);
    assertFalse(said.contains("Name of this bore"), said);
  }
}
