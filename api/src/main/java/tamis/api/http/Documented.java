package tamis.api.http;

import java.util.List;
import tamis.api.representation.Problem;
import tamis.engine.formula.Formula;
import tamis.engine.ingredient.Ingredient;

/** What the annotations of the handlers name. */
public final class Documented {
  /** Every record of theirs, for the schemas of the description. */
  public static final List<Class<? extends Record>> RECORDS =
      List.of(
          Formula.class,
          Ingredient.class,
          DocumentPage.class,
          RevisionPage.class,
          TableList.class,
          TablePage.class,
          Liveness.class,
          Readiness.class,
          Problem.class);

  private Documented() {}
}
