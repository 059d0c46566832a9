package tamis.plugin.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the reader does not understand is told, wherever it stands. */
class NothingLostTest {
  private static Intake.Result read(String text) {
    return LabelledLines.read(text, "en");
  }

  private static List<String> unresolved(String text) {
    return read(text).unresolved().stream().map(Unresolved::text).toList();
  }

  @Test
  void lines_behind_a_step_that_are_not_understood_are_told() {
    assertThat(unresolved("Cake\n1 cup flour\nBeat well.\n3 whites\n2 lge eggs\n1 stone sugar"))
        .containsExactly("3 whites", "2 lge eggs", "1 stone sugar");
  }

  @Test
  void amounts_without_a_verb_are_no_step() {
    String text =
        "1 cup flour\nButter (100 g) and sugar (50 g)\n1 stone flour\n2 lge eggs\n3 whites\nsalt";
    assertThat(unresolved(text))
        .containsExactly(
            "Butter (100 g) and sugar (50 g)", "1 stone flour", "2 lge eggs", "3 whites", "salt");
  }

  @ParameterizedTest
  @ValueSource(strings = {"salt", "flour for dusting", "the yolks of three and white of one egg"})
  void a_food_behind_a_step_is_a_line(String last) {
    Intake.Result result = read("Cake\n1 cup flour\nBeat well.\n" + last);
    assertThat(result.lines()).hasSize(2);
    assertThat(result.lines().get(1).text()).isEqualTo(last);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"20 minutes at 350 °F", "Butter the pan", "1. Mix all", "Bake 30 minutes."})
  void work_stays_a_step(String last) {
    assertThat(read("Cake\n1 cup flour\nBeat well.\n" + last).lines()).hasSize(1);
  }
}
