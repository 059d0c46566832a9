package tamis.api.http;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.Base64;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import tamis.api.http.AnswerCache.At;
import tamis.api.plugin.Plugins;
import tamis.api.representation.Format;

/**
 * Tags of answers: what was asked, in which form, at which revision, by which plugins. A store in
 * memory counts anew at each start, so the start is part of the tag.
 */
final class FormTags {
  private static final int BYTES = 15;

  private final String process;

  FormTags(Plugins plugins) {
    this.process = plugins.fingerprint() + " " + UUID.randomUUID();
  }

  String of(String calculation, Format format, @Nullable String query, At at) {
    String all = String.join("\n", process, calculation, format.name(), "" + query, "" + at);
    try {
      byte[] hash =
          MessageDigest.getInstance("SHA-256").digest(all.getBytes(StandardCharsets.UTF_8));
      byte[] beginning = Arrays.copyOf(hash, BYTES);
      return '"' + Base64.getUrlEncoder().withoutPadding().encodeToString(beginning) + '"';
    } catch (NoSuchAlgorithmException impossible) {
      throw new IllegalStateException("every JDK has SHA-256", impossible);
    }
  }
}
