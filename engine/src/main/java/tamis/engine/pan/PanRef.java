package tamis.engine.pan;

import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.record.Reference;
import tamis.engine.record.TextOrObject;

/**
 * A pan by its id in the table of pans, or by shape and dimensions.
 *
 * @param id the id, or null if the pan is described
 * @param object the description, or null if the id is given
 */
public record PanRef(@Nullable String id, @Nullable Pan object)
    implements TextOrObject<Pan>, Reference {
  public PanRef {
    if ((id == null) == (object == null)) {
      throw Refusal.of(
          FaultCode.EXACTLY_ONE, "a pan is named by its id or described, one of the two");
    }
  }

  public static PanRef parse(String text) {
    return new PanRef(text.strip(), null);
  }

  public static PanRef of(Pan pan) {
    return new PanRef(null, pan);
  }

  @Override
  public @Nullable String text() {
    return id;
  }

  @Override
  public String toString() {
    return id == null ? "this pan" : id;
  }
}
