package tamis.api.store;

import tamis.engine.formula.Formula;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.price.PriceList;
import tamis.engine.trial.Trial;

/** What sort of document it is. */
public enum Kind {
  FORMULA("formula", Formula.class),
  INGREDIENT("ingredient", Ingredient.class),
  PRICES("prices", PriceList.class),
  TRIAL("trial", Trial.class);

  private final String word;
  private final Class<? extends Record> type;

  Kind(String word, Class<? extends Record> type) {
    this.word = word;
    this.type = type;
  }

  /** For sentences, and in the store. */
  public String word() {
    return word;
  }

  /** The kind of that word. */
  static Kind of(String word) {
    for (Kind kind : values()) {
      if (kind.word.equals(word)) {
        return kind;
      }
    }
    throw new IllegalArgumentException(word);
  }

  /** The record that its documents are read as. */
  public Class<? extends Record> type() {
    return type;
  }

  /** Whether its writes are counted apart, so that a reading leaves other answers as they are. */
  public boolean hasOwnCount() {
    return this == TRIAL;
  }
}
