package tamis.plugin.intake.line;

import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import tamis.plugin.intake.word.Tongue;

/** Reads numbers of packages, and what one of them holds. */
record Packages(MeasureReader reader) {
  private static final Set<String> PACKAGES =
      Set.of("can", "package", "packet", "jar", "bottle", "box", "bag", "carton", "tub", "bar");

  static final Set<String> SPOONS = Set.of("tsp", "tbsp", "dsp");

  /** "2 1/4-oz packets": two of a quarter, or one of two and a quarter. */
  private static final Pattern PARTED = Pattern.compile("[1-9]\\d*\\s+(\\d+/|[¼½¾⅓⅔⅛⅜⅝⅞])");

  static boolean isPackage(String thing) {
    return PACKAGES.contains(thing);
  }

  /** A measure, or a number of packages of a size. */
  @Nullable Measure sized(int from) {
    @Nullable Measure first = reader.single(from);
    if (first == null) {
      return null;
    }
    if (first.unit() == null || first.container()) {
      @Nullable Measure packages = packages(first);
      return packages == null ? first : packages;
    }
    Tongue.@Nullable Match thing =
        reader.tongue().container(reader.phrase(), reader.afterHyphen(first.next()));
    if (thing == null || !isPackage(first, thing)) {
      return first;
    }
    if (first.amount().isRange() && first.high() < 4 * first.low()) {
      return first;
    }
    if (first.amount().isRange()) { // "2 - 14 oz cans": two cans, not 2 to 14 ounces
      Measure size =
          first.of(Amount.exactly(first.high(), first.next(), false, null), first.next());
      Amount count = Amount.exactly(first.low(), thing.next(), false, null);
      return first.of(count, thing.next()).counted(thing.value(), size, thing.next());
    }
    String written = reader.phrase().text(from, first.amount().next());
    boolean parted = first.amount().doubt() == null && PARTED.matcher(written).lookingAt();
    String doubt = parted ? "whether `" + written + "` is one number" : first.amount().doubt();
    Amount one = Amount.exactly(1, thing.next(), false, doubt);
    return new Measure(one, thing.value(), true, first, first.manner(), thing.next());
  }

  /** "14-ounce can milk", "14 oz can milk", but not "8 oz cake flour". */
  private boolean isPackage(Measure first, Tongue.Match thing) {
    boolean hyphen =
        reader.phrase().isDash(first.amount().next())
            && reader.phrase().touches(first.amount().next());
    boolean name = reader.phrase().has(thing.next()) && !reader.phrase().is(thing.next(), ",");
    return first.unit() != null
        && reader.isWeight(first.unit())
        && !SPOONS.contains(first.unit())
        && name
        && (hyphen || PACKAGES.contains(thing.value()));
  }

  /** "2 (8-oz) packages", "1 14-ounce can", "1 can (14 oz)", "2 x 400 g cans". */
  private @Nullable Measure packages(Measure count) {
    int at = reader.tongue().behind("size", reader.phrase(), count.next());
    boolean times = reader.phrase().isTimes(at);
    boolean open = reader.phrase().is(at, "(") || reader.phrase().is(at, "[");
    int inner = times || open ? at + 1 : at;
    inner = open ? reader.tongue().behind("about", reader.phrase(), inner) : inner;
    @Nullable Measure size = reader.phrase().isNumber(inner) ? reader.single(inner) : null;
    if (size == null || size.unit() == null || size.container() || !reader.isWeight(size.unit())) {
      return null;
    }
    int behind = open ? reader.phrase().behindParenthesis(at) : size.next();
    if (behind < 0) {
      return null;
    }
    boolean each = saysEach(size.next(), open ? behind - 1 : size.next(), behind);
    if (open && size.next() < behind - 1 && !each && !alsoInAnotherUnit(size.next(), behind - 1)) {
      return null;
    }
    if (count.unit() != null) {
      return ofEach(count, size, behind, each);
    }
    Tongue.@Nullable Match thing =
        reader.tongue().container(reader.phrase(), reader.afterHyphen(behind));
    if (thing != null) {
      return count.counted(thing.value(), size, thing.next());
    }
    return times ? count.counted("each", size, behind) : null;
  }

  /** "8 oz each", within the bracket or behind it. */
  private boolean saysEach(int from, int to, int behind) {
    Tongue.@Nullable Match inside = from < to ? reader.tongue().unit(reader.phrase(), from) : null;
    boolean said = inside != null && inside.value().equals("each") && inside.next() == to;
    return said
        || (reader.phrase().isWord(behind)
            && reader.phrase().folded(behind, behind + 1).equals("each"));
  }

  /**
   * "1 can (14 oz)" is what one holds; of "2 cans (28 oz)" nobody knows whether it is of each. "2
   * sticks (8 oz)" says the whole once more: what one weighs is known.
   */
  private @Nullable Measure ofEach(Measure count, Measure size, int behind, boolean each) {
    String thing = String.valueOf(count.unit());
    if (!each && !PACKAGES.contains(thing)) {
      return null;
    }
    if (each || count.high() <= 1) {
      return count.counted(thing, size, behind);
    }
    String doubt =
        "whether "
            + reader.phrase().text(size.amount().next() - 1, size.next())
            + " is of each or of all";
    Amount unsure =
        new Amount(
            count.low(), count.high(), count.amount().next(), count.amount().worded(), doubt);
    return count.of(unsure, behind).counted(thing, size, behind);
  }

  private boolean alsoInAnotherUnit(int from, int to) {
    boolean mark =
        reader.phrase().is(from, "/")
            || reader.phrase().is(from, ",")
            || reader.phrase().is(from, ";");
    @Nullable Measure other = mark ? reader.single(from + 1) : null;
    return other != null && other.unit() != null && other.next() == to;
  }
}
