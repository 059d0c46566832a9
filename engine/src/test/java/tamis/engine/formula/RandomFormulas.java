package tamis.engine.formula;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;

/**
 * Formulas that nest in each other at random, each one makeable: {@code f0} is the one to ask for.
 * Equal seeds give equal formulas.
 */
final class RandomFormulas {
  private static final List<String> FLOURS = List.of("bread-flour", "rye-flour", "cake-flour");
  private static final List<String> OTHERS =
      List.of("water", "salt", "egg", "egg-white", "egg-yolk", "honey", "milk-whole");

  private final Random random;
  private final List<Card> cards = new ArrayList<>();

  private RandomFormulas(long seed) {
    this.random = new Random(seed);
  }

  /** At least one formula; each names only later ones. */
  static List<Card> of(long seed) {
    RandomFormulas formulas = new RandomFormulas(seed);
    int count = 1 + formulas.random.nextInt(5);
    for (int i = 0; i < count; i++) {
      formulas.cards.add(formulas.card(i, count));
    }
    return formulas.cards;
  }

  /** The same formulas, the lines of each in another order. */
  static List<Card> shuffled(long seed) {
    List<Card> cards = of(seed);
    Random order = new Random(seed + 1);
    for (Card card : cards) {
      Collections.shuffle(card.lines(), order);
    }
    return cards;
  }

  private Card card(int index, int count) {
    Card card = Card.of("f" + index);
    boolean percent = index > 0 && random.nextInt(3) == 0;
    add(card, percent ? "100 % bread-flour" : weight() + " bread-flour");
    for (int i = random.nextInt(6); i > 0; i--) {
      add(card, any(percent) + remains());
    }
    if (index + 1 < count) {
      int part = index + 1 + random.nextInt(count - index - 1);
      String role = one(List.of("", " : role=preferment", " : role=part", " : role=soaker"));
      add(card, percent ? number(1, 90) + " % >f" + part : weight() + " >f" + part + role);
    }
    if (random.nextInt(3) > 0) {
      card.yield("makeUpLoss", random.nextInt(30) / 100.0, "bakeLoss", random.nextInt(60) / 100.0);
    }
    return card;
  }

  /**
   * In percent formulas that are parts nothing has a weight, so that they stay wholly in percent.
   */
  private String any(boolean percent) {
    return switch (random.nextInt(percent ? 3 : 6)) {
      case 0, 1 -> number(0.1, 90) + " % " + one(OTHERS);
      case 2 -> "as needed " + one(FLOURS);
      case 3 -> number(0.1, 4) + " cup " + one(FLOURS);
      case 4 -> (1 + random.nextInt(9)) + " each egg";
      default -> weight() + " " + one(OTHERS);
    };
  }

  private String remains() {
    return random.nextInt(5) == 0 ? " : remains=" + random.nextInt(100) / 100.0 : "";
  }

  private String weight() {
    return number(1, 2_000) + " g";
  }

  private String number(double from, double to) {
    return String.format(Locale.ROOT, "%.2f", from + random.nextDouble() * (to - from));
  }

  private <T> T one(List<T> several) {
    return several.get(random.nextInt(several.size()));
  }

  private static void add(Card card, String line) {
    List<Object> lines = card.lines();
    lines.add(Card.line(line));
  }

  /** Written out, to be read when a property fails. */
  static String text(List<Card> cards) {
    StringBuilder text = new StringBuilder();
    for (Card card : cards) {
      Map<String, Object> tree = card.tree();
      text.append("\n  ").append(tree);
    }
    return text.toString();
  }
}
