package tamis.plugin.intake;

import tamis.plugin.intake.word.Phrase;

/** Makes an id of words: lower-case letters and digits with hyphens between them. */
final class Slug {
  private static final int LONGEST = 60;

  private Slug() {}

  static String of(String words) {
    StringBuilder slug = new StringBuilder();
    String plain = Phrase.withoutAccents(Phrase.folded(words)).replace("ß", "ss");
    for (int i = 0; i < plain.length() && slug.length() < LONGEST; i++) {
      char c = plain.charAt(i);
      boolean kept = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
      if (kept) {
        slug.append(c);
      } else if (!slug.isEmpty() && slug.charAt(slug.length() - 1) != '-') {
        slug.append('-');
      }
    }
    while (!slug.isEmpty() && slug.charAt(slug.length() - 1) == '-') {
      slug.setLength(slug.length() - 1);
    }
    return slug.isEmpty() ? "part" : slug.toString();
  }
}
