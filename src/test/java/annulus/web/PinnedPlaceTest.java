package annulus.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.DeskData;
import annulus.advice.Shop;
import annulus.advice.ShopPlace;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.junit.jupiter.api.Test;

class PinnedPlaceTest {
  private static final Shop SHOP = DeskData.SHOP;

  @Test
  void a_place_is_kept_with_what_parts_come_in_with() {
    for (ShopPlace place : SHOP.places()) {
      ShopPlace read = PinnedPlace.read(PinnedPlace.text(place), SHOP);
      assertEquals(12, read.unsaidC(), "the cellar is the coldest");
      assertTrue(PinnedPlace.alike(place, read));
      assertFalse(PinnedPlace.alike(place, read.withUnsaid(11)));
    }
  }

  @Test
  void one_kept_before_that_takes_the_shop_as_it_is_if_colder() {
    for (ShopPlace place : SHOP.places()) {
      ObjectNode kept = (ObjectNode) Orders.tree(PinnedPlace.text(place));
      kept.remove("unsaidC");
      assertEquals(12, PinnedPlace.read(kept.toString(), SHOP).unsaidC());
      Shop without = SHOP.with(place.withUnsaid(30));
      double coldest = place.climate().range().low();
      assertEquals(coldest, PinnedPlace.read(kept.toString(), without).unsaidC());
    }
  }
}
