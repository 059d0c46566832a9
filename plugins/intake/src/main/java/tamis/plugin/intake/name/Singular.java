package tamis.plugin.intake.name;

import java.util.ArrayList;
import java.util.List;
import tamis.plugin.intake.word.Language;

/** Forms that a plural may have come from, and the plural of an English singular. */
final class Singular {
  private Singular() {}

  static List<String> of(String name, Language language) {
    return switch (language.code()) {
      case "en" -> english(name);
      case "de" -> german(name);
      case "fr", "es" -> List.of(everyWord(name));
      default -> List.of();
    };
  }

  /** "Von 3 Eiern", "gemahlener Mandeln": as the name stands in a list. */
  private static List<String> german(String name) {
    List<String> forms = new ArrayList<>(ending(name, "n"));
    int space = name.indexOf(' ');
    if (space > 4 && name.substring(0, space).matches(".*e[mnrs]")) {
      String stem = name.substring(0, space - 2);
      String noun = name.substring(space);
      for (String ending : List.of("e", "er", "es")) {
        forms.add(stem + ending + noun);
        ending(noun, "n").forEach(one -> forms.add(stem + ending + one));
      }
    }
    return forms;
  }

  private static List<String> ending(String name, String ending) {
    boolean has = name.endsWith(ending) && name.length() > 4;
    return has ? List.of(name.substring(0, name.length() - ending.length())) : List.of();
  }

  /** "Gousses de vanille" is "gousse de vanille", "huevos grandes" "huevo grande". */
  private static String everyWord(String name) {
    StringBuilder singular = new StringBuilder(name.length());
    for (String word : name.split(" ", -1)) {
      boolean plural = word.length() > 3 && word.endsWith("s");
      String one = plural ? word.substring(0, word.length() - 1) : word;
      singular.append(singular.isEmpty() ? "" : " ").append(one);
    }
    return singular.toString();
  }

  private static List<String> english(String name) {
    List<String> forms = new ArrayList<>();
    if (name.endsWith("ies") && name.length() > 4) {
      forms.add(name.substring(0, name.length() - 3) + "y");
    }
    if (name.endsWith("ves") && name.length() > 4) {
      forms.add(name.substring(0, name.length() - 3) + "f");
    }
    if (name.endsWith("es") && name.length() > 3) {
      forms.add(name.substring(0, name.length() - 2));
    }
    if (name.endsWith("s") && !name.endsWith("ss") && name.length() > 3) {
      forms.add(name.substring(0, name.length() - 1));
    } else {
      forms.add(name + "s");
    }
    return forms;
  }
}
