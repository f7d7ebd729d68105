package annulus.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.Advice;
import annulus.catalog.Catalog;
import annulus.catalog.Severity;
import annulus.select.Rule;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** Cautions stand gravest first. */
class CautionListTest {
  private static final Catalog CATALOG = SampleOrders.CATALOG;
  private static final CautionList LIST = new CautionList(CATALOG);

  @Test
  void every_caution_is_ranked() {
    Set<String> all = new TreeSet<>(CATALOG.cautions().keySet());
    for (Rule rule : SampleOrders.ADVISOR.knowledge().rules().rules()) {
      if (rule.verdict() == Rule.Verdict.CAUTION) {
        all.add(rule.id());
      }
    }
    assertEquals(all, new TreeSet<>(CATALOG.ranks().keySet()));
  }

  @Test
  void the_table_of_ranks_reads_gravest_first() {
    List<Severity> order = CATALOG.ranks().values().stream().map(r -> r.severity()).toList();
    assertEquals(order.stream().sorted().toList(), order);
  }

  @Test
  void what_hurts_people_stands_before_what_fails_and_that_before_advice() {
    for (Map.Entry<String, Advice> sample : SampleOrders.all().entrySet()) {
      List<Severity> order = new ArrayList<>();
      for (CautionList.Caution caution : LIST.of(sample.getValue())) {
        if (!caution.id().isEmpty()) {
          order.add(LIST.severity(caution.id()));
        }
      }
      assertEquals(order.stream().sorted().toList(), order, sample.getKey());
      assertEquals(Severity.HURTS_PEOPLE, order.get(0));
    }
  }

  @Test
  void a_caution_that_nobody_ranked_is_taken_as_one_of_the_worst() {
    assertEquals(Severity.HURTS_PEOPLE, LIST.severity("a-shop's-own"));
  }

  @Test
  void text_json_and_page_tell_the_same_in_the_same_order() throws IOException {
    for (Map.Entry<String, Advice> sample : SampleOrders.all().entrySet()) {
      Advice advice = sample.getValue();
      String text = TextReport.of(advice, CATALOG, false).replaceAll("\\s+", " ");
      int at = text.indexOf(" Cautions ");
      for (String caution : new AnswerWords(advice, CATALOG).cautions()) {
        int next = text.indexOf(caution.replaceAll("\\s+", " "), at);
        assertTrue(next > at, sample.getKey() + ": " + caution);
        at = next;
      }
      JsonNode json = new ObjectMapper().readTree(JsonReport.of(advice, CATALOG));
      for (String list : List.of("cautions", "standingCautions")) {
        List<Severity> order = new ArrayList<>();
        for (JsonNode caution : json.get(list)) {
          String word = caution.get("severity").asText();
          order.add(Severity.valueOf(word.toUpperCase(java.util.Locale.ROOT).replace('-', '_')));
        }
        assertEquals(order.stream().sorted().toList(), order, sample.getKey());
      }
    }
  }
}
