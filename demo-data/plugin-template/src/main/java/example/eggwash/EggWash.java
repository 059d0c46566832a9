package example.eggwash;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.ingredient.Weighing;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Fraction;
import tamis.engine.quantity.Measures;
import tamis.engine.quantity.Spread;
import tamis.engine.record.Described;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

/** Egg wash for so many pieces: grams by kind of piece (common practice), and the eggs for it. */
public final class EggWash implements Calculation<EggWash.Input, EggWash.Result> {
  static final Table TABLE =
      TableReader.read(EggWash.class, "egg-wash.csv", "Egg wash a piece", List.of("piece"));

  /** What is washed. */
  public record Input(
      @Described(value = "Kind of piece, as the table egg-wash names it", example = "roll", most = 60)
          String piece,
      @Described(value = "How many", atLeast = "1", atMost = "100000", example = "60") int count,
      @Described(value = "Part of the wash that is milk or water", example = "20 %")
          @Nullable Fraction thinned) {}

  /** How much wash. */
  public record Result(
      @Described(value = "Wash to mix", unit = "g", headline = true) double grams,
      @Described(value = "Least to expect", unit = "g") double low,
      @Described(value = "Most to expect", unit = "g") double high,
      @Described("Eggs to crack") double eggs) {}

  @Override
  public String name() {
    return "egg-wash";
  }

  @Override
  public String title() {
    return "Egg wash for so many pieces";
  }

  @Override
  public Class<Input> input() {
    return Input.class;
  }

  @Override
  public Class<Result> result() {
    return Result.class;
  }

  @Override
  public List<Input> examples() {
    return List.of(new Input("roll", 60, null), new Input("croissant", 24, new Fraction(0.2)));
  }

  @Override
  public Answer<Result> calculate(Input input, Kitchen kitchen) {
    Notes notes = new Notes();
    Row row = row(input.piece());
    notes.cite(row, "/grams");
    Spread wash =
        new Spread(row.number("low_g"), row.number("typical_g"), row.number("high_g"))
            .times(input.count());
    double egg = input.thinned() == null ? 1 : input.thinned().rest();
    Spread each =
        new Weighing(Measures.US, "", "/eggs", notes)
            .gramsPerUnit("each", kitchen.ingredient(IngredientRef.parse("egg")), null);
    notes.caution(
        "raw-egg", "", "the wash is raw egg: keep it cold, make it fresh, and follow local codes");
    double eggs = wash.typical() * egg / each.typical();
    return Answer.of(new Result(wash.typical(), wash.low(), wash.high(), eggs), notes);
  }

  private static Row row(String piece) {
    Row row = TABLE.row(piece);
    if (row == null) {
      String known = String.join(", ", TABLE.rows().stream().map(Row::key).toList());
      throw new Refusal(
          new Fault(
              FaultCode.NOT_ALLOWED,
              "/piece",
              piece,
              known,
              "no egg wash is known for `" + piece + "`; known are " + known));
    }
    return row;
  }
}
