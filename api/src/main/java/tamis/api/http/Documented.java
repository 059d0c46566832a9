package tamis.api.http;

import java.util.List;
import tamis.api.representation.Problem;
import tamis.engine.formula.Formula;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.price.PriceList;
import tamis.engine.trial.Observation;
import tamis.engine.trial.Trial;

/** What the annotations of the handlers name. */
public final class Documented {
  /** Every record of theirs, for the schemas of the description. */
  public static final List<Class<? extends Record>> RECORDS =
      List.of(
          Formula.class,
          Ingredient.class,
          PriceList.class,
          Trial.class,
          Observation.class,
          ObservationList.class,
          DocumentPage.class,
          RevisionPage.class,
          TableList.class,
          TablePage.class,
          Liveness.class,
          Readiness.class,
          Problem.class);

  private Documented() {}
}
