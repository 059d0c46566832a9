package tamis.api.plugin;

import java.util.HashSet;
import java.util.Set;
import tamis.api.representation.Options;
import tamis.engine.record.Form;
import tamis.engine.record.Shape;
import tamis.engine.spi.Calculation;

/** Looks at a dropped-in calculation before anybody calls it. */
final class Inspection {
  private static final String NAME_FORM = "[a-z0-9]+(-[a-z0-9]+)*";

  private final Set<Class<?>> seen = new HashSet<>();

  private Inspection() {}

  /**
   * @throws UnusablePlugin if it breaks the contract
   */
  static void of(Calculation<?, ?> calculation) {
    name("calculation", calculation.name());
    try {
      Options.refuseReserved(calculation.input());
      var inspection = new Inspection();
      inspection.shape(calculation.input());
      inspection.shape(calculation.result());
    } catch (IllegalArgumentException undescribed) {
      throw new UnusablePlugin(
          "its calculation `" + calculation.name() + "` is not described as the contract says",
          undescribed);
    }
  }

  static void name(String what, String name) {
    if (!name.matches(NAME_FORM)) {
      throw new UnusablePlugin(
          "its " + what + " is named `" + name + "`; names are lower-case words with hyphens");
    }
  }

  private void shape(Class<? extends Record> type) {
    if (seen.add(type)) {
      Shape.of(type).components().values().forEach(component -> form(component.form()));
    }
  }

  private void form(Form form) {
    if (form instanceof Form.Nested nested) {
      shape(nested.type());
    } else if (form instanceof Form.Listed listed) {
      form(listed.entry());
    } else if (form instanceof Form.Mapped mapped) {
      form(mapped.entry());
    } else if (form instanceof Form.Either either) {
      shape(either.object());
    }
  }
}
