package tamis.engine.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tamis.engine.formula.Formula;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.To;

class PlainValuesTest {
  private static final RecordReader READER = new RecordReader(References.UNCHECKED, Limits.usual());

  private static final Map<String, Object> FORMULA =
      Map.of(
          "id", "cream",
          "measures", "metric",
          "lines",
              List.of(
                  Map.of("ingredient", "milk-whole", "quantity", "1 l", "remains", 0.9),
                  Map.of("formula", "syrup@2", "quantity", "50 g", "role", "part")),
          "yield",
              Map.of(
                  "portions",
                  12.0,
                  "bakeLoss",
                  "10 %",
                  "pans",
                  List.of(
                      Map.of(
                          "pan",
                          Map.of("shape", "round", "diameter", "20 cm", "height", "5 cm"),
                          "count",
                          2))),
          "stages", List.of(Map.of("id", "boil", "hands", true, "duration", "5 min")),
          "shelfLife", List.of(Map.of("at", "4 °C", "for", "3 d")));

  @Test
  void a_record_is_read_back_equal() {
    Formula formula = READER.read(Formula.class, FORMULA);
    Map<String, Object> plain = PlainValues.of(formula);
    assertThat(READER.read(Formula.class, plain)).isEqualTo(formula);
    assertThat(plain).doesNotContainKeys("notes", "packaging");
    assertThat(plain.get("shelfLife").toString()).contains("for=");
  }

  @Test
  void a_reference_is_its_text_or_its_document() {
    Formula formula = READER.read(Formula.class, FORMULA);
    assertThat(PlainValues.ofEither(FormulaRef.parse("cream@3"))).isEqualTo("cream@3");
    assertThat(PlainValues.ofEither(FormulaRef.of(formula))).isEqualTo(PlainValues.of(formula));
  }

  @Test
  void a_size_is_read_back_equal() {
    To size =
        READER.read(
            To.class,
            Map.of(
                "stock",
                List.of(
                    Map.of("ingredient", "milk-whole", "quantity", "120 g"),
                    Map.of("formula", "cream", "quantity", "2 kg"))));
    assertThat(READER.read(To.class, PlainValues.of(size))).isEqualTo(size);
  }
}
