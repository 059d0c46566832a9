package tamis.engine.ingredient;

import java.util.List;
import java.util.TreeSet;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Spread;

/** Weighs pieces by the mass of one: an egg, a leaf, a stick. */
record ByPiece(String at, String cited, Notes notes) {

  Spread grams(String piece, Ingredient ingredient, @Nullable String state) {
    List<PieceMass> rows =
        ingredient.pieces().stream().filter(p -> p.piece().equals(piece)).toList();
    if (rows.isEmpty()) {
      if (piece.equals(PieceMass.EACH) && ingredient.pieceMass() != null) {
        IngredientSource.cite(ingredient, "pieceMass", cited, notes);
        return Spread.exactly(ingredient.pieceMass().grams());
      }
      throw Weighing.refused(
          FaultCode.NO_PIECE_MASS,
          ingredient.id(),
          pieces(ingredient),
          "no mass of one "
              + piece
              + " of `"
              + ingredient.id()
              + "` is known; "
              + pieces(ingredient));
    }
    PieceMass row = piece(rows, ingredient, state);
    IngredientSource.cite(row, ingredient, cited, notes);
    return row.spread();
  }

  private PieceMass piece(List<PieceMass> rows, Ingredient ingredient, @Nullable String state) {
    Function<@Nullable String, @Nullable PieceMass> find =
        wanted -> {
          for (PieceMass row : rows) {
            if (wanted == null ? row.state() == null : wanted.equals(row.state())) {
              return row;
            }
          }
          return null;
        };
    @Nullable PieceMass exact = state == null ? null : find.apply(state);
    @Nullable PieceMass any = exact == null ? find.apply(null) : exact;
    if (any != null) {
      remarkOnSize(any, rows, ingredient);
      return any;
    }
    PieceMass first = rows.get(0);
    notes.estimate(
        "state-assumed",
        at,
        "a "
            + first.piece()
            + " of `"
            + ingredient.id()
            + "` is taken as "
            + first.state()
            + "; its mass differs by size or state");
    return first;
  }

  /** A bare egg is a large one: nobody may think that the size went unseen. */
  private void remarkOnSize(PieceMass taken, List<PieceMass> rows, Ingredient ingredient) {
    if (taken.state() != null) {
      return;
    }
    TreeSet<String> sizes = new TreeSet<>();
    String size = "";
    for (PieceMass row : rows) {
      if (row.state() != null) {
        sizes.add(row.state());
        size = row.typical().equals(taken.typical()) ? row.state() + ", " : size;
      }
    }
    if (!sizes.isEmpty()) {
      notes.remark(
          "size-assumed",
          at,
          "one `"
              + ingredient.id()
              + "` is taken as "
              + size
              + taken.typical()
              + "; known are "
              + String.join(", ", sizes));
    }
  }

  private static String pieces(Ingredient ingredient) {
    List<String> known = ingredient.pieces().stream().map(PieceMass::piece).distinct().toList();
    return known.isEmpty()
        ? "give a mass"
        : "known are " + String.join(", ", known) + ", or give a mass";
  }
}
