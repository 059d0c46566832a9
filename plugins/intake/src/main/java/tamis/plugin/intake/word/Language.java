package tamis.plugin.intake.word;

import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tamis.engine.quantity.Measures;

/** The language that a collection is written in, with its place where words differ by place. */
public enum Language {
  EN("en", null, null),
  EN_US("en", "US", Measures.US),
  EN_GB("en", "GB", Measures.UK),
  EN_AU("en", "AU", Measures.AU),
  DE("de", null, Measures.METRIC),
  FR("fr", null, Measures.METRIC),
  IT("it", null, Measures.METRIC),
  ES("es", null, Measures.METRIC);

  private final String code;
  private final @Nullable String place;
  private final @Nullable Measures measures;

  Language(String code, @Nullable String place, @Nullable Measures measures) {
    this.code = code;
    this.place = place;
    this.measures = measures;
  }

  /** Two letters, without the place. */
  public String code() {
    return code;
  }

  /** Whose measures are usual where it is written; null if that differs. */
  public @Nullable Measures measures() {
    return measures;
  }

  /** English of no place becomes English of the place whose measures are used. */
  public Language at(@Nullable Measures used) {
    if (this != EN || used == null) {
      return this;
    }
    return switch (used) {
      case US -> EN_US;
      case UK -> EN_GB;
      case AU -> EN_AU;
      case METRIC, JP -> EN;
    };
  }

  /** The language of a tag such as {@code en-GB} or {@code de-AT}; null if it is none of these. */
  public static @Nullable Language ofTag(String tag) {
    String plain = tag.strip().toLowerCase(Locale.ROOT).replace('_', '-');
    for (Language language : values()) {
      if (language.toString().toLowerCase(Locale.ROOT).equals(plain)) {
        return language;
      }
    }
    int hyphen = plain.indexOf('-');
    return hyphen < 0 ? null : ofTag(plain.substring(0, hyphen));
  }

  @Override
  public String toString() {
    return place == null ? code : code + "-" + place;
  }
}
