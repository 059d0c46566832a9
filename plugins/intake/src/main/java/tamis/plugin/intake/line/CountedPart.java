package tamis.plugin.intake.line;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import tamis.plugin.intake.word.Tongue;

/** "2/3 apples" are two or three of them as often as a part of one. */
record CountedPart(Tongue tongue, String text) {
  private static final Pattern NEIGHBOURS =
      Pattern.compile("(?<![\\d/.,])(?:2/3|3/4|4/5|5/6|6/7|7/8|8/9)(?![\\d/])");

  void check(Gathered gathered) {
    @Nullable Measure measure = gathered.measure();
    boolean plural = !tongue.language().code().equals("en") || gathered.asWritten().endsWith("s");
    if (measure == null || measure.unit() != null || measure.high() >= 1 || !plural) {
      return;
    }
    Matcher written = NEIGHBOURS.matcher(text);
    if (written.find()) {
      gathered.doubt("whether `" + written.group() + "` is a part of one or a range is not said");
    }
  }
}
