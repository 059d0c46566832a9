package tamis.plugin.scaling;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Batch;
import tamis.engine.formula.Role;
import tamis.engine.record.Described;

/** One formula of the batch, with the parts it is made of. */
public record ScaledPart(
    @Described("Place of the formula line it stands for; empty for the formula itself") String path,
    @Described("Id of the formula") @Nullable String formula,
    @Described("Title of the formula") String title,
    @Described("What it is within the formula above") Role role,
    @Described("Times the formula as written") double factor,
    @Described(value = "Mass at mixing that stays in it", unit = "g") double grams,
    @Described(value = "All that is weighed in", unit = "g") double weighedGrams,
    @Described(value = "Raw mass after make-up", unit = "g") double madeUpGrams,
    @Described(value = "Finished mass, after all losses", unit = "g") double yieldGrams,
    @Described("Its own parts") List<ScaledPart> parts) {

  static ScaledPart of(Batch.Part part) {
    return new ScaledPart(
        part.path(),
        part.formula().id(),
        part.formula().name(),
        part.role(),
        part.factor(),
        part.mass().typical(),
        part.weighed().typical(),
        part.madeUp().typical(),
        part.finished().typical(),
        part.parts().stream().map(ScaledPart::of).toList());
  }
}
