package tamis.plugin.trials;

import java.util.List;

/**
 * The different things that trials say of a measure that is no number, such as lots.
 *
 * @param words each once, in the order of the alphabet
 */
record Categories(List<String> words) {
  static Categories of(Measured measured) {
    return new Categories(
        measured.figures().values().stream()
            .map(figure -> String.valueOf(figure.text()))
            .distinct()
            .sorted()
            .toList());
  }

  boolean isTwo() {
    return words.size() == 2;
  }

  int place(Figure figure) {
    return words.indexOf(String.valueOf(figure.text()));
  }
}
