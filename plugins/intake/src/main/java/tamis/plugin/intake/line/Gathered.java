package tamis.plugin.intake.line;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import tamis.plugin.intake.name.Found;

/** What has been read of a line so far. */
final class Gathered {
  private final String text;
  private final List<Measure> also = new ArrayList<>();
  private final List<ReadLine.State> states = new ArrayList<>();
  private final List<String> preparation = new ArrayList<>();
  private final List<String> doubts = new ArrayList<>();
  private final List<String> besides = new ArrayList<>();
  private @Nullable Measure measure;
  private @Nullable Found found;
  private @Nullable String size;
  private @Nullable String measuredAs;
  private String asWritten = "";
  private boolean asNeeded;
  private boolean summed;
  private double loose;

  Gathered(String text) {
    this.text = text;
  }

  void measure(Measure read) {
    measure = read;
    if (read.amount().doubt() != null) {
      doubt("it is not clear " + because(read.amount().doubt()));
    }
    if (read.amount().doubt() == null && read.high() == 0) {
      doubt("the quantity is nothing");
    }
    loosen(0.15 * read.manner().stream().filter(word -> !word.equals("level")).count());
    if (read.amount().isRange()) {
      loosen(0.05);
    }
  }

  /** The same amount of another thing. */
  void recount(Measure of) {
    measure = of;
  }

  private static String because(String doubt) {
    return doubt.startsWith("whether") || doubt.startsWith("how many")
        ? doubt
        : "what is meant: " + doubt;
  }

  @Nullable Measure measure() {
    return measure;
  }

  void also(Measure other) {
    also.add(other);
  }

  /** Takes the first of what is said once more as the quantity, where none is said. */
  void measureByAlso(Predicate<Measure> of) {
    if (measure == null && !also.isEmpty() && of.test(also.get(0))) {
      measure(also.remove(0));
    }
  }

  void forgetAlso() {
    also.clear();
  }

  String asWritten() {
    return asWritten;
  }

  void name(String written, @Nullable Found is) {
    asWritten = written;
    found = is;
  }

  boolean isKnown() {
    return found != null && found.isKnown();
  }

  /** Whether the mass of what is named is known in a state. */
  boolean hasState(String state) {
    return found != null
        && found.ingredient() != null
        && found.ingredient().states().contains(state);
  }

  @Nullable Found found() {
    return found;
  }

  void state(ReadLine.State state) {
    states.add(state);
  }

  void size(String of) {
    size = of;
  }

  /** "Flour, spooned and levelled": how it was measured, said behind the name. */
  void measuredAs(String state) {
    measuredAs = state;
  }

  void preparation(String words) {
    String plain = trimmed(words);
    if (!plain.isEmpty()) {
      preparation.add(plain);
    }
  }

  private static String trimmed(String words) {
    String plain = words.strip();
    while (!plain.isEmpty()
        && ".,;:".indexOf(plain.charAt(plain.length() - 1)) >= 0
        && plain.lastIndexOf('.', plain.length() - 2) < plain.length() - 3) {
      plain = plain.substring(0, plain.length() - 1).strip();
    }
    while (!plain.isEmpty() && ".,;:–—-".indexOf(plain.charAt(0)) >= 0) {
      plain = plain.substring(1).strip();
    }
    return plain;
  }

  List<String> preparations() {
    return preparation;
  }

  @Nullable String size() {
    return size;
  }

  /** Whether nothing is doubtful, and no second ingredient told. */
  boolean isSettled() {
    return doubts.isEmpty() && besides.isEmpty();
  }

  boolean isAlsoSaid() {
    return !also.isEmpty();
  }

  void summed() {
    summed = true;
  }

  /** Whether what is added behind the name is in the measure. */
  boolean isSummed() {
    return summed;
  }

  void asNeeded() {
    asNeeded = true;
  }

  boolean isAsNeeded() {
    return asNeeded;
  }

  void doubt(String why) {
    doubts.add(why);
  }

  /** A second ingredient of the line. */
  void beside(String words) {
    besides.add("`" + words + "` stands in the line too; write it on a line of its own");
    loosen(0.4);
  }

  void loosen(double by) {
    loose += by;
  }

  ReadLine line() {
    return new ReadLine(
        text,
        measure,
        also,
        asNeeded,
        asWritten,
        found,
        states,
        size,
        measuredAs,
        preparation,
        doubts,
        besides,
        loose);
  }
}
