package tamis.plugin.intake.word;

import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** The endings that adjectives and participles take beside the noun: gehackte, hachées, tritati. */
final class Endings {
  /** Kinds of words that agree with the noun. */
  static final List<String> KINDS =
      List.of("state", "temper", "quality", "size", "entire", "fill", "kept", "drained", "kind");

  private Endings() {}

  /** Adds the other forms of each single word; what the table itself says goes before. */
  static void add(Language language, Map<String, String> words) {
    Map.copyOf(words)
        .forEach(
            (word, value) -> {
              if (word.indexOf(' ') < 0) {
                forms(language, word).forEach(form -> words.putIfAbsent(form, value));
              }
            });
  }

  private static List<String> forms(Language language, String word) {
    return switch (language.code()) {
      case "de" -> of(without(word, "e"), "", "e", "em", "en", "er", "es");
      case "fr" -> of(without(word, "s"), "e", "s", "es");
      case "it" -> of(without(word, "o", "a", "i", "e"), "o", "a", "i", "e");
      case "es" -> of(without(word, "os", "as", "o", "a"), "o", "a", "os", "as");
      default -> List.of();
    };
  }

  /** The stem before the first of the endings that the word has; itself if it has none. */
  private static String without(String word, String... endings) {
    for (String ending : endings) {
      if (word.endsWith(ending) && word.length() > ending.length() + 3) {
        return word.substring(0, word.length() - ending.length());
      }
    }
    return word;
  }

  private static List<String> of(String stem, String... endings) {
    return Stream.of(endings).map(ending -> stem + ending).toList();
  }
}
