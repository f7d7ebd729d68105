package annulus.web;

import annulus.advice.Shop;
import annulus.advice.ShopPlace;
import annulus.handback.ClockClimate;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * A place of the shop's file as it was when a joint was closed in it, as text that lies with the
 * job: its whole course of temperature, so that no later edit of the file makes the past warmer.
 */
final class PinnedPlace {
  private PinnedPlace() {}

  /** All that a joint in it is judged by; the hands-on time before closing is not. */
  static String text(ShopPlace place) {
    ObjectNode node = Orders.JSON.createObjectNode();
    node.put("name", place.name());
    node.put("zone", place.climate().zone().getId());
    node.put("plusMinusC", place.plusMinusC());
    node.put("warm", place.warm());
    node.put("fan", place.fan());
    node.put("unsaidC", place.unsaidC());
    node.put("describedAs", place.describedAs());
    ObjectNode days = node.putObject("days");
    place
        .climate()
        .days()
        .forEach(
            (day, points) -> {
              ArrayNode written = days.putArray(day.name());
              points.forEach(p -> written.addArray().add(p.minute()).add(p.celsius()));
            });
    return node.toString();
  }

  /**
   * The place that was written. One written before it was kept what parts come in with takes that
   * of the shop as it is now, if colder than the place.
   */
  static ShopPlace read(String text, Shop now) {
    JsonNode node = Orders.tree(text);
    Map<DayOfWeek, List<ClockClimate.Point>> days = new EnumMap<>(DayOfWeek.class);
    for (DayOfWeek day : DayOfWeek.values()) {
      List<ClockClimate.Point> points = new ArrayList<>();
      node.path("days")
          .path(day.name())
          .forEach(p -> points.add(new ClockClimate.Point(p.get(0).asInt(), p.get(1).asDouble())));
      days.put(day, points);
    }
    ClockClimate climate = new ClockClimate(ZoneId.of(node.get("zone").asText()), days);
    double coldest =
        now.places().stream()
            .mapToDouble(ShopPlace::unsaidC)
            .reduce(climate.range().low(), Math::min);
    return new ShopPlace(
        node.get("name").asText(),
        climate,
        node.get("plusMinusC").asDouble(),
        Duration.ZERO,
        node.get("warm").asBoolean(),
        node.get("fan").asBoolean(),
        node.path("unsaidC").asDouble(coldest),
        node.get("describedAs").asText());
  }

  /** Whether a joint is judged alike in both. */
  static boolean alike(ShopPlace one, ShopPlace other) {
    return one.climate().equals(other.climate())
        && one.plusMinusC() == other.plusMinusC()
        && one.warm() == other.warm()
        && one.fan() == other.fan()
        && one.unsaidC() == other.unsaidC();
  }
}
