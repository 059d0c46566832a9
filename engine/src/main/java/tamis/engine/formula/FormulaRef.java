package tamis.engine.formula;

import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.record.Reference;
import tamis.engine.record.TextOrObject;

/**
 * Names a formula: {@code brioche} as it is now, {@code brioche@3} as it was at revision 3, or the
 * whole document.
 *
 * @param id the id, or null if the document is given
 * @param revision the revision, or null for the newest
 * @param object the document, or null if the id is given
 */
public record FormulaRef(@Nullable String id, @Nullable Integer revision, @Nullable Formula object)
    implements TextOrObject<Formula>, Reference {

  private static final Pattern REVISION = Pattern.compile("[1-9][0-9]{0,8}");

  public static FormulaRef parse(String text) {
    String given = text.strip();
    int at = given.indexOf('@');
    String id = at < 0 ? given : given.substring(0, at);
    String revision = at < 0 ? "1" : given.substring(at + 1);
    if (!Ingredient.isId(id) || !REVISION.matcher(revision).matches()) {
      throw new Refusal(
          new Fault(
              FaultCode.UNKNOWN_FORMULA,
              "",
              given,
              "an id such as brioche or brioche@3",
              "`" + given + "` is no id of a formula; an id is lower-case words with hyphens"));
    }
    return new FormulaRef(id, at < 0 ? null : Integer.valueOf(revision), null);
  }

  public static FormulaRef of(Formula document) {
    return new FormulaRef(null, null, document);
  }

  @Override
  public @Nullable String text() {
    return id == null ? null : toString();
  }

  @Override
  public String toString() {
    if (id == null) {
      return object == null || object.id() == null ? "this formula" : object.id();
    }
    return revision == null ? id : id + "@" + revision;
  }
}
