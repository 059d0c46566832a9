package tamis.plugin.dough;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Batch.BatchLine;
import tamis.engine.formula.Batch.Part;
import tamis.engine.formula.Line;

/** One thing that goes into a mix: an ingredient line, or a sub-formula as a whole. */
record Mixed(@Nullable BatchLine line, @Nullable Part part) {

  /** All that goes into one formula, in the order of its lines. */
  static List<Mixed> of(Part formula) {
    Iterator<BatchLine> lines = formula.lines().iterator();
    Iterator<Part> parts = formula.parts().iterator();
    List<Mixed> mixed = new ArrayList<>();
    for (Line line : formula.formula().lines()) {
      mixed.add(
          line.ingredient() != null
              ? new Mixed(lines.next(), null)
              : new Mixed(null, parts.next()));
    }
    return mixed;
  }
}
