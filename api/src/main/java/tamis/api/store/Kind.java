package tamis.api.store;

import tamis.engine.formula.Formula;
import tamis.engine.ingredient.Ingredient;

/** What sort of document it is. */
public enum Kind {
  FORMULA("formula", Formula.class),
  INGREDIENT("ingredient", Ingredient.class);

  private final String word;
  private final Class<? extends Record> type;

  Kind(String word, Class<? extends Record> type) {
    this.word = word;
    this.type = type;
  }

  /** For sentences. */
  public String word() {
    return word;
  }

  /** The record that its documents are read as. */
  public Class<? extends Record> type() {
    return type;
  }
}
