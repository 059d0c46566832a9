package tamis.plugin.intake;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.plugin.intake.word.Language;

/** Two lines of text, and a page in German. */
final class IntakeExamples {
  private IntakeExamples() {}

  static List<Intake.Input> all() {
    return List.of(
        text("2 1/4 cups all-purpose flour, sifted\n1/2 lb. butter", null),
        text(
            """
            Butterplätzchen
            Zutaten
            250 g Mehl
            125 g weiche Butter
            1 Prise Salz
            Zubereitung
            Alles verkneten und 12 Minuten bei 180 °C backen.
            """,
            Language.DE));
  }

  private static Intake.Input text(String text, @Nullable Language language) {
    return new Intake.Input(text, null, null, null, null, language, null, null, null, List.of());
  }
}
