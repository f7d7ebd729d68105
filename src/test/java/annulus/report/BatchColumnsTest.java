package annulus.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.Advice;
import java.util.List;
import org.junit.jupiter.api.Test;

class BatchColumnsTest {
  private static String cell(Advice advice, String column) {
    return BatchColumns.row(advice).get(BatchColumns.header().indexOf(column));
  }

  @Test
  void every_row_has_a_cell_for_every_name() {
    for (Advice advice : SampleOrders.all().values()) {
      assertEquals(BatchColumns.header().size(), BatchColumns.row(advice).size());
    }
  }

  @Test
  void the_columns_keep_their_names_and_order() {
    assertEquals(
        List.of(
            "job",
            "decision",
            "class",
            "primer",
            "hand_back",
            "hand_back_after_min",
            "radial_gap_um",
            "radial_gap_plus_minus_um",
            "diametral_clearance_um",
            "diametral_plus_minus_um",
            "covers_probability",
            "fixture_typical_min",
            "fixture_sure_min",
            "handling_typical_min",
            "handling_sure_min",
            "functional_typical_min",
            "functional_sure_min",
            "full_typical_min",
            "full_sure_min",
            "working_time_min",
            "reason",
            "cautions"),
        BatchColumns.header());
  }

  @Test
  void a_good_fit_fills_its_cells() {
    Advice advice = SampleOrders.goodFit();
    assertEquals("use-compound", cell(advice, "decision"));
    assertEquals("thin-lasting", cell(advice, "class"));
    assertEquals("30.0", cell(advice, "radial_gap_um"));
    assertEquals("60.0", cell(advice, "diametral_clearance_um"));
    assertEquals("2026-11-30T00:09:00+01:00", cell(advice, "hand_back"));
    assertTrue(cell(advice, "cautions").contains("injury-without-load"));
  }

  @Test
  void a_torn_joint_has_no_times() {
    Advice advice = SampleOrders.all().get("moved");
    assertEquals("", cell(advice, "hand_back"));
    assertEquals("", cell(advice, "full_sure_min"));
    assertEquals("", cell(advice, "working_time_min"));
  }
}
