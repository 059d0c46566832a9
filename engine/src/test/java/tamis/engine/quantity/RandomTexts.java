package tamis.engine.quantity;

import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;

/**
 * Texts that nobody would write and texts that somebody nearly would, the same ones for the same
 * seed. Another seed: {@code -Dtamis.seed=42}.
 */
public final class RandomTexts {
  public static final long SEED = Long.getLong("tamis.seed", 20_260_501L);

  /** What quantities are written with, and what they are not. */
  private static final List<String> PIECES =
      pieces(
          "1|2|0|999999999999999999999|.|,|/|\u2044|-|–|—|−|+|e|E|½|⅓|⅞| | | |\u00a0|\u2009|\t|\n"
              + "|\u0000|%|g|kg|cup|cups|T|t|oz|fl oz|°C|°F|C|K|J|W|Pa|in|min|g/ml|each|stick"
              + "|leaves|[cup_us]|{each}|imperial pint|can #10|a|an|one|half|thirds|twenty|-four"
              + "|and|of|to|or|as needed|NaN|Infinity|0x1p3|1e309|1d|EUR|JPY|XXX|11.95|\"|'|″|(|)|<"
              + "|\\|é|e\u0301|ß|İ|ﬁ|\ud83c|🥐|\uffff|butter|flour");

  /** Good ones of every kind, to be spoilt. */
  private static final List<String> GOOD =
      pieces(
          "227 g|2 1/4 cup|1½-2 tbsp|one and one-half cups|68 %|as needed|11.95 EUR|0.42 g/ml|350 °F"
              + "|5 kcal|800 W|1013 hPa|20 cm|12 min|0.1|butter, unsalted|fl oz");

  private final RandomGenerator random;

  public RandomTexts(long seed) {
    random = RandomGeneratorFactory.of("Xoshiro256PlusPlus").create(seed);
  }

  /** Any characters, a good text that is spoilt in a place or two, or up to a dozen pieces. */
  public String next() {
    int kind = random.nextInt(8);
    StringBuilder text = new StringBuilder(kind < 3 ? one(GOOD) : "");
    int length = random.nextInt(kind < 3 ? 3 : 12);
    for (int i = 0; i < length; i++) {
      String piece =
          kind == 7 ? String.valueOf((char) random.nextInt(Character.MAX_VALUE + 1)) : one(PIECES);
      text.insert(kind < 3 ? random.nextInt(text.length() + 1) : text.length(), piece);
    }
    return text.toString();
  }

  /** A number of any magnitude between two bounds, at times one of the bounds or a round one. */
  public double number(double low, double high) {
    int kind = random.nextInt(10);
    if (kind == 0) {
      return random.nextBoolean() ? low : high;
    }
    double even = low + (high - low) * random.nextDouble();
    if (kind == 1) {
      return Math.min(high, Math.max(low, Math.rint(even)));
    }
    double small = even * Math.pow(10, -random.nextInt(16));
    return kind < 6 && small >= low ? small : even;
  }

  private String one(List<String> pieces) {
    return pieces.get(random.nextInt(pieces.size()));
  }

  private static List<String> pieces(String joined) {
    return List.of(joined.split("\\|"));
  }
}
