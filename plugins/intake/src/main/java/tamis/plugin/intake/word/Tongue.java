package tamis.plugin.intake.word;

import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.quantity.Dimension;
import tamis.engine.quantity.Units;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

/** The words that a language has for numbers, units, states and the parts of a page. */
public final class Tongue {
  static final Table WORDS =
      TableReader.plain(
          Tongue.class,
          "/tamis/plugin/intake/words.csv",
          "Words of the trade that lines and pages are read by",
          List.of("language", "kind", "word"));

  private static final int MOST_WORDS = 4;
  private static final int MOST_TOKENS_OF_A_UNIT = 6;
  private static final int MOST_TOKENS_OF_A_CONTAINER = 3;
  private static final Set<Dimension> OF_INGREDIENTS =
      Set.of(Dimension.MASS, Dimension.VOLUME, Dimension.COUNT, Dimension.RATIO);
  private static final Map<Language, Tongue> ALL = all();

  private final Language language;
  private final Map<String, Map<String, String>> words = new HashMap<>();
  private final Map<String, String> units = new HashMap<>();
  private final Map<String, String> containers = new HashMap<>();

  /**
   * A word or words found at a place.
   *
   * @param value what the table says of it; the word itself if that is nothing
   * @param next the token behind it
   */
  public record Match(String value, int next) {}

  private Tongue(Language language) {
    this.language = language;
    for (Row row : WORDS.rows()) {
      if (row.text("language").equals(language.code())) {
        String word = row.text("word");
        @Nullable String value = row.textOrNull("value");
        if (row.text("kind").equals("measure")) {
          unit(word, String.valueOf(value));
          continue;
        }
        Map<String, String> of =
            row.text("kind").equals("unit")
                ? containers
                : words.computeIfAbsent(row.text("kind"), kind -> new HashMap<>());
        of.put(word, value == null ? word : value);
      }
    }
    Endings.KINDS.forEach(kind -> Endings.add(language, words.getOrDefault(kind, Map.of())));
    Units.standard().table().rows().forEach(this::name);
  }

  private static Map<Language, Tongue> all() {
    Map<Language, Tongue> all = new EnumMap<>(Language.class);
    for (Language language : Language.values()) {
      all.put(language, new Tongue(language));
    }
    return all;
  }

  public static Tongue of(Language language) {
    return Objects.requireNonNull(ALL.get(language));
  }

  /** Every other language in which a page may be written. */
  public static List<Language> others() {
    return List.of(Language.DE, Language.FR, Language.IT, Language.ES);
  }

  private void name(Row row) {
    String symbol = row.text("unit");
    @Nullable String known = Units.standard().name(symbol);
    if (known == null || !OF_INGREDIENTS.contains(Units.standard().dimension(symbol))) {
      return;
    }
    unit(symbol, symbol);
    @Nullable String aliases = row.textOrNull("aliases");
    for (String alias : aliases == null ? new String[0] : aliases.split(";", -1)) {
      boolean tagged = alias.indexOf(':') == 2;
      if (!tagged || alias.startsWith(language.code())) {
        unit(tagged ? alias.substring(3) : alias, symbol);
      }
    }
  }

  private void unit(String name, String symbol) {
    units.put(name, symbol);
    units.putIfAbsent(name.toLowerCase(Locale.ROOT), symbol);
  }

  public Language language() {
    return language;
  }

  public boolean decimalComma() {
    return !language.code().equals("en");
  }

  /** Whether {@code word}, folded, is of the kind. */
  public boolean knows(String kind, String word) {
    return words.getOrDefault(kind, Map.of()).containsKey(word);
  }

  /** All words of a kind, the longest first. */
  public List<String> words(String kind) {
    return words.getOrDefault(kind, Map.of()).keySet().stream()
        .sorted(Comparator.comparingInt(String::length).reversed())
        .toList();
  }

  /** What the table says of a folded word of the kind, or null. */
  public @Nullable String value(String kind, String word) {
    return words.getOrDefault(kind, Map.of()).get(word);
  }

  /** The longest words of the kind that stand at a place, or null. */
  public @Nullable Match match(String kind, Phrase phrase, int from) {
    Map<String, String> of = words.getOrDefault(kind, Map.of());
    for (int length = MOST_WORDS; length > 0; length--) {
      if (phrase.has(from + length - 1)) {
        @Nullable String value = of.get(phrase.folded(from, from + length));
        if (value != null) {
          return new Match(value, from + length);
        }
      }
    }
    return null;
  }

  /** The token behind words of the kind that stand at a place; the place itself if none do. */
  public int behind(String kind, Phrase phrase, int from) {
    @Nullable Match match = match(kind, phrase, from);
    return match == null ? from : match.next();
  }

  /**
   * The token behind "of", and behind "of the" at a place; the place itself if none stands there.
   */
  public int behindOf(Phrase phrase, int from) {
    return behind("of", phrase, behind("of", phrase, from));
  }

  /** The unit that stands at a place, or null; a point that abbreviates it belongs to it. */
  public @Nullable Match unit(Phrase phrase, int from) {
    for (int length = MOST_TOKENS_OF_A_UNIT; length > 0; length--) {
      if (phrase.has(from + length - 1)) {
        String written = phrase.text(from, from + length);
        @Nullable String symbol = units.get(written.replace('’', '\''));
        String folded = phrase.folded(from, from + length);
        if (symbol == null) {
          symbol = units.get(folded);
        }
        if (symbol == null && folded.indexOf('-') > 1) {
          symbol = units.get(folded.replace("-", "")); // tea-spoon
        }
        if (symbol != null) {
          return abbreviated(phrase, new Match(symbol, from + length));
        }
      }
    }
    return null;
  }

  /** A thing that is counted, such as a package, a slice or a leaf. */
  public @Nullable Match container(Phrase phrase, int from) {
    for (int length = MOST_TOKENS_OF_A_CONTAINER; length > 0; length--) {
      if (phrase.has(from + length - 1)) {
        String folded = phrase.folded(from, from + length);
        @Nullable String symbol = containers.get(folded);
        if (symbol == null && length > 2) {
          symbol = containers.get(folded.replace('-', ' ')); // breakfast-cupful
        }
        if (symbol != null) {
          return abbreviated(phrase, new Match(symbol, from + length));
        }
      }
    }
    return null;
  }

  private static Match abbreviated(Phrase phrase, Match match) {
    boolean point = phrase.is(match.next(), ".") && phrase.touches(match.next());
    return point ? new Match(match.value(), match.next() + 1) : match;
  }
}
