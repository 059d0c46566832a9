package tamis.plugin.intake.name;

import java.util.ArrayList;
import java.util.List;

/** Forms that an English plural may have come from, and the plural of a singular. */
final class Singular {
  private Singular() {}

  static List<String> of(String name) {
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
