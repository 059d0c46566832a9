package tamis.engine.formula;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A formula as a test writes it, one text a line: {@code 650 g water}, {@code 300 g >poolish :
 * role=preferment remains=0.4}. After {@code >} stands the id of a formula.
 */
final class Card {
  private final Map<String, Object> tree = new LinkedHashMap<>();

  private Card() {}

  static Card of(String id, String... lines) {
    Card card = new Card();
    card.tree.put("id", id);
    List<Object> read = new ArrayList<>();
    for (String line : lines) {
      read.add(line(line));
    }
    card.tree.put("lines", read);
    return card;
  }

  /**
   * Reads {@code bread {bakeLoss=10 %}: 800 g bread-flour; 400 g >poolish // poolish: …}: the
   * formula that is asked for, and what it names.
   */
  static List<Card> read(String text) {
    List<Card> cards = new ArrayList<>();
    for (String one : text.split(" // ")) {
      int colon = one.indexOf(": ", one.contains("}: ") ? one.indexOf("}: ") : 0);
      String[] head = one.substring(0, colon).split(" ", 2);
      Card card = of(head[0], one.substring(colon + 2).split("; "));
      Map<String, Object> yield = head.length == 1 ? new LinkedHashMap<>() : values(head[1]);
      if (yield.remove("flour") instanceof String flour) {
        card.with("flour", List.of(flour));
      }
      cards.add(yield.isEmpty() ? card : card.with("yield", yield));
    }
    return cards;
  }

  /** Reads {@code {pieces=10, pieceMass=480 g}}; what is a number without a unit is one. */
  static Map<String, Object> values(String text) {
    Map<String, Object> values = new LinkedHashMap<>();
    for (String pair : text.replaceAll("[{}]", "").split(", ")) {
      String[] both = pair.split("=");
      boolean number = both[1].matches("[0-9.]+");
      values.put(both[0], number ? (Object) Double.valueOf(both[1]) : both[1]);
    }
    return values;
  }

  /** With another part of the document, such as {@code flour}. */
  Card with(String name, Object value) {
    tree.put(name, value);
    return this;
  }

  Card yield(Object... namesAndValues) {
    return with("yield", map(namesAndValues));
  }

  /** With one more line, whose formula is a whole document. */
  Card line(String quantity, Card part) {
    lines().add(map("quantity", quantity, "formula", part.tree()));
    return this;
  }

  @SuppressWarnings("unchecked") // made so above
  List<Object> lines() {
    return (List<Object>) tree.get("lines");
  }

  String id() {
    return (String) tree.get("id");
  }

  Map<String, Object> tree() {
    return tree;
  }

  static Map<String, Object> map(Object... namesAndValues) {
    Map<String, Object> map = new LinkedHashMap<>();
    for (int i = 0; i < namesAndValues.length; i += 2) {
      map.put((String) namesAndValues[i], namesAndValues[i + 1]);
    }
    return map;
  }

  static Map<String, Object> line(String text) {
    String[] parts = text.split(" : ");
    int last = parts[0].lastIndexOf(' ');
    String what = parts[0].substring(last + 1);
    Map<String, Object> line = new LinkedHashMap<>();
    line.put("quantity", parts[0].substring(0, last));
    if (what.startsWith(">")) {
      line.put("formula", what.substring(1));
    } else {
      line.put("ingredient", what);
    }
    for (String option : parts.length > 1 ? parts[1].split(" ") : new String[0]) {
      String[] pair = option.split("=");
      line.put(pair[0], pair[0].equals("remains") ? (Object) Double.valueOf(pair[1]) : pair[1]);
    }
    return line;
  }
}
