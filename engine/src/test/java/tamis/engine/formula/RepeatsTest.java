package tamis.engine.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tamis.engine.formula.Batch.Part;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.record.References;

/** How often stages are done. Expected counts are worked by hand. */
class RepeatsTest {
  /** Stages as {@code mix, bake<mix+glaze}: behind {@code <} stands what is done before. */
  private static List<Object> stages(String text) {
    List<Object> stages = new ArrayList<>();
    for (String one : text.split(", ")) {
      String[] both = one.split("<");
      Map<String, Object> stage = Card.map("id", both[0], "per", "load", "load", "500 g");
      if (both.length > 1) {
        stage.put("after", List.of(both[1].split("\\+")));
      }
      stages.add(stage);
    }
    return stages;
  }

  private static Part cream() {
    Card cream =
        Card.of(
                "cream",
                "300 g sugar-granulated : stage=syrup",
                "90 g water : stage=syrup remains=0.4",
                "150 g egg-white : stage=foam",
                "452 g butter-unsalted : stage=beat",
                "60 g >coffee : stage=beat")
            .with("stages", stages("syrup, foam, pour<syrup+foam, beat<pour, chill<beat"))
            .yield("makeUpLoss", "10 %");
    Card coffee = Card.of("coffee", "50 g water", "50 g sugar-granulated");
    return Bench.with(cream, coffee).batch("cream").root();
  }

  @ParameterizedTest(name = "{1} g go into {0}")
  @CsvSource({"syrup, 390", "foam, 150", "pour, 486", "beat, 998", "chill, 998"})
  void a_stage_holds_what_is_weighed_there_and_what_stays_of_all_before(String id, double grams) {
    // 90 g of water goes into the syrup, 36 g of it on to the foam: 300 + 36 + 150
    assertThat(Repeats.of(cream(), null).gramsInto(stage(cream(), id)))
        .isEqualTo(grams, within(1e-9));
  }

  @ParameterizedTest(name = "{0}: {1} loads of 500 g")
  @CsvSource({"syrup, 1", "foam, 1", "pour, 1", "beat, 2"})
  void loads_are_whole(String id, double loads) {
    assertThat(Repeats.of(cream(), null).of(stage(cream(), id)).number()).isEqualTo(loads);
    assertThat(new Repeats(cream(), 3, null).of(stage(cream(), "beat")).number())
        .as("2994 g")
        .isEqualTo(6);
  }

  @Test
  void a_stage_that_no_line_and_no_other_stage_leads_into_holds_everything() {
    Card dough =
        Card.of("dough", "1 kg bread-flour", "400 g water", "100 g sugar-granulated : stage=glaze")
            .with("stages", stages("mix, rest, glaze, bake<rest+glaze"));
    Part part = Bench.with(dough).batch("dough").root();
    for (String id : List.of("rest", "bake")) {
      assertThat(Repeats.of(part, null).gramsInto(stage(part, id))).as(id).isEqualTo(1500);
    }
    assertThat(Repeats.of(part, null).gramsInto(stage(part, "mix"))).isEqualTo(1400);
  }

  @ParameterizedTest(name = "{0} to {1}: {2} pieces")
  @CsvSource(
      delimiter = '|',
      nullValues = "none",
      value = {
        "{pieces=24}                  | none                     | 24",
        "{pieces=24}                  | {factor=1.1}             | 26.4",
        "{portions=4}                 | {factor=2}               | none",
        "{pieceMass=50 g}             | {factor=2}               | 40",
        "{pieceMass=50 g, makeUpLoss=10 %} | {factor=2}          | 36",
        "{pieces=24}                  | {pieces=7, pieceMass=60 g} | 7",
      })
  void pieces_are_counted_by_the_size_then_by_the_yield(String yield, String to, Double pieces) {
    Card buns = Card.of("buns", "600 g bread-flour", "400 g water");
    buns.with("yield", Card.values(yield));
    List<Object> size = new ArrayList<>();
    if (to != null) {
      Card.values(to).forEach((name, value) -> size.addAll(List.of(name, value)));
    }
    Part part = Bench.with(buns).batch("buns", size.toArray()).root();
    @Nullable To asked = to == null ? null : to(size.toArray());
    if (pieces == null) {
      assertThat(Repeats.pieces(part, asked)).isNull();
    } else {
      assertThat(Repeats.pieces(part, asked)).isCloseTo(pieces, within(1e-9));
    }
  }

  private static To to(Object... namesAndValues) {
    return new RecordReader(References.UNCHECKED, Limits.usual())
        .read(To.class, Card.map(namesAndValues));
  }

  @Test
  void tins_are_pieces_where_the_yield_says_so() {
    Map<String, Object> tin = Card.map("pan", "round-20x5-cm", "count", 2);
    Map<String, Object> asked = Card.map("pan", "round-20x5-cm", "count", 5);
    To five = to("pans", List.of(asked));
    Card inTins = Card.of("cake", "1 kg egg").yield("pieces", 2.0, "pans", List.of(tin));
    Card onTrays = Card.of("buns", "1 kg egg").yield("pieces", 24.0, "pans", List.of(tin));
    Card unsaid = Card.of("cake", "1 kg egg").yield("pans", List.of(tin));
    assertThat(pieces(inTins, five)).isEqualTo(5);
    assertThat(pieces(onTrays, five)).as("24 as written, factor 1").isEqualTo(24);
    assertThat(pieces(unsaid, five)).isEqualTo(5);
    assertThat(pieces(unsaid, null)).isEqualTo(2);
  }

  private static Double pieces(Card card, To to) {
    return Repeats.pieces(Bench.with(card).batch(card.id()).root(), to);
  }

  @Test
  void what_is_done_for_each_piece_is_done_a_whole_number_of_times() {
    Stage shape = read("per", "piece");
    assertThat(new Repeats(cream(), 1, 26.4).of(shape).number()).isEqualTo(27);
    assertThat(new Repeats(cream(), 1, 0.3 / 0.1).of(shape).number()).isEqualTo(3);
    assertThat(new Repeats(cream(), 1, 0.2).of(shape).number()).isEqualTo(1);
    assertThat(new Repeats(cream(), 9, 26.4).of(read()).number()).as("a batch").isEqualTo(1);
  }

  @Test
  void what_is_not_known_says_what_to_give() {
    Repeats unknown = new Repeats(cream(), 1, null);
    assertThat(unknown.of(read("per", "piece")).number()).isNull();
    assertThat(unknown.of(read("per", "piece")).lacks()).contains("`yield.pieces`");
    assertThat(unknown.of(read("per", "load", "load", "20 each")).lacks())
        .contains("`yield.pieces`");
    Repeats counted = new Repeats(cream(), 1, 60.0);
    assertThat(counted.of(read("per", "load", "load", "20 each")).number()).isEqualTo(3);
    for (String load : List.of("2 l", "as needed", "0 each", "0 g")) {
      assertThat(counted.of(read("per", "load", "load", load)).number()).as(load).isNull();
      assertThat(counted.of(read("per", "load", "load", load)).lacks()).contains("`load`");
    }
    assertThat(counted.of(read("per", "load")).lacks()).contains("`load`");
  }

  private static Stage read(Object... more) {
    Map<String, Object> stage = Card.map("id", "shape");
    stage.putAll(Card.map(more));
    return new RecordReader(References.UNCHECKED, Limits.usual()).read(Stage.class, stage);
  }

  private static Stage stage(Part part, String id) {
    return part.formula().stages().stream()
        .filter(stage -> stage.id().equals(id))
        .findFirst()
        .orElseThrow();
  }
}
