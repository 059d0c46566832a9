package tamis.api.representation;

import static java.nio.charset.StandardCharsets.UTF_16LE;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.math.BigDecimal;
import java.nio.ByteBuffer;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;

class StrictJsonTest {
  private static Object tree(String json) {
    return StrictJson.tree(json.getBytes(UTF_8), JsonLimits.usual());
  }

  private static List<String> faultsOf(String json) {
    return Refused.at(() -> tree(json));
  }

  @Test
  void objects_lists_and_single_values_become_plain_ones() {
    Object tree = tree(" {\"a\":[1, 2.5, \"ä\", true, false, null], \"b\":{\"c\":{}} } ");

    assertThat(tree)
        .isEqualTo(
            Map.of(
                "a", Arrays.asList(1L, 2.5, "ä", true, false, null), "b", Map.of("c", Map.of())));
  }

  @Test
  void a_mark_at_the_start_is_passed_over() {
    assertThat(tree("\uFEFF{\"a\":1}")).isEqualTo(Map.of("a", 1L));
  }

  @Test
  void null_alone_is_a_value() {
    assertThat(tree("null")).isNull();
  }

  @ParameterizedTest
  @CsvSource({
    "1, 1",
    "-0, 0",
    "999999999999999999, 999999999999999999",
    "1.5e3, 1500.0",
    "0.1, 0.1"
  })
  void numbers_are_exact_in_the_smallest_type_that_holds_them(String json, String number) {
    assertThat(String.valueOf(tree(json))).isEqualTo(number);
  }

  @Test
  void a_number_of_more_digits_than_a_double_keeps_is_decimal() {
    assertThat(tree("0.12345678901234567890")).isEqualTo(new BigDecimal("0.12345678901234567890"));
    assertThat(tree("1000000000000000000000")).isEqualTo(new BigDecimal("1000000000000000000000"));
  }

  @ParameterizedTest
  @CsvSource({
    "'', 'the body is empty; JSON is wanted'",
    "'{\"a\":', 'the body is no JSON: it ends too early, line 1, column 6'",
    "'{\"ä\":tru}', 'the body is no JSON: not readable, line 1, column 6'",
    "'{} x', 'the body is no JSON: not readable, line 1, column 4'",
    "'{} {}', 'the body is no JSON: something follows the JSON, line 1, column 4'",
  })
  void what_is_no_json_is_refused_with_its_place(String json, String message) {
    Fault fault = Refused.only(() -> tree(json));

    assertThat(fault.code()).isEqualTo(FaultCode.NOT_JSON);
    assertThat(fault.message()).isEqualTo(message);
  }

  @Test
  void the_line_is_counted_too() {
    Fault fault = Refused.only(() -> tree("{\n \"a\": 1,\n \"b\": }"));

    assertThat(fault.message()).endsWith("line 3, column 7");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "{'a':1}",
        "{a:1}",
        "[1,]",
        "{\"a\":1,}",
        "NaN",
        "[Infinity]",
        "+1",
        "01",
        ".5",
        "5.",
        "//x\n1",
        "\"a\nb\"",
        "\"\\x\"",
        "{",
        "]",
        "\"\\ud83d\"",
        "{\"\\udc00\":1}",
        "nul"
      })
  void nothing_beyond_the_standard_is_read(String json) {
    assertThat(faultsOf(json)).containsExactly("not-json ");
  }

  @Test
  void a_message_names_no_class_of_ours_or_of_others() {
    for (String json : List.of("{\"a\":", "[1,]", "\"\\ud83d\"", "{} {}", "nul")) {
      String message = Refused.only(() -> tree(json)).message();
      assertThat(message).doesNotContain("Source", "jackson", "Exception", "byte[]", "START_");
    }
  }

  @Test
  void bytes_that_are_no_utf8_are_refused() {
    byte[] latin = {'{', '"', (byte) 0xE4, '"', ':', '1', '}'};
    byte[] overlong = {'"', (byte) 0xC0, (byte) 0xAF, '"'};
    byte[] wide = "{\"a\":1}".getBytes(UTF_16LE);

    for (byte[] bytes : List.of(latin, overlong, wide)) {
      assertThat(Refused.at(() -> StrictJson.tree(bytes, JsonLimits.usual())))
          .containsExactly("not-utf8 ");
    }
  }

  /** Texts of all lengths, broken anywhere: the decoder of the JDK says which are UTF-8. */
  @Test
  void what_is_utf8_is_decided_as_the_decoder_does() {
    SplittableRandom random = new SplittableRandom(8);
    String letters = "abc ü°€ЖЩ😀\uFFFD\u0800";
    for (int i = 0; i < 50_000; i++) {
      StringBuilder text = new StringBuilder("\"");
      for (int length = random.nextInt(40); length > 0; length--) {
        int at =
            letters.offsetByCodePoints(
                0, random.nextInt(letters.codePointCount(0, letters.length())));
        text.appendCodePoint(letters.codePointAt(at));
      }
      byte[] bytes = text.append('"').toString().getBytes(UTF_8);
      if (i % 2 == 1 && bytes.length > 2) {
        bytes[1 + random.nextInt(bytes.length - 2)] = (byte) random.nextInt(0x80, 0x100);
      }
      @Nullable String decoded = PercentText.utf8(ByteBuffer.wrap(bytes));
      if (decoded == null) {
        assertThat(Refused.at(() -> StrictJson.tree(bytes, JsonLimits.usual())))
            .containsExactly("not-utf8 ");
      } else {
        assertThat(StrictJson.tree(bytes, JsonLimits.usual()))
            .isEqualTo(decoded.substring(1, decoded.length() - 1));
      }
    }
  }

  @Test
  void a_zero_byte_is_found_wherever_it_stands() {
    for (int length = 2; length < 30; length++) {
      for (int at = 0; at < length; at++) {
        byte[] bytes = "x".repeat(length).getBytes(UTF_8);
        bytes[at] = 0;
        assertThat(Refused.at(() -> StrictJson.tree(bytes, JsonLimits.usual())))
            .containsExactly("not-utf8 ");
      }
    }
  }

  @Test
  void of_more_bytes_only_the_beginning_is_read() {
    byte[] bytes = "{\"a\":1}\0\0 and more".getBytes(UTF_8);
    assertThat(StrictJson.tree(bytes, 7, JsonLimits.usual())).isEqualTo(Map.of("a", 1L));
    assertThat(Refused.only(() -> StrictJson.tree(bytes, 6, JsonLimits.usual())).message())
        .contains("it ends too early");
  }

  @Test
  void every_name_told_twice_is_told_with_its_place() {
    assertThat(faultsOf("{\"a\":{\"x/y\":1,\"x/y\":2},\"b\":[{\"c\":1,\"c\":2}],\"a\":3}"))
        .containsExactly("duplicate-name /a/x~1y", "duplicate-name /b/0/c", "duplicate-name /a");
  }

  @Test
  void nesting_is_read_to_its_limit_and_not_beyond() {
    assertThat(tree("[".repeat(32) + "]".repeat(32))).isInstanceOf(List.class);

    String deep = "{\"a\":" + "[".repeat(32) + "]".repeat(32) + ",\"b\":1,\"b\":2}";
    assertThat(faultsOf(deep))
        .containsExactly("too-deep /a" + "/0".repeat(31), "duplicate-name /b");
  }

  @Test
  void digits_are_read_to_their_limit_and_not_beyond() {
    assertThat(tree("1".repeat(40))).isEqualTo(new BigDecimal("1".repeat(40)));
    assertThat(faultsOf("{\"a\":" + "1".repeat(41) + ",\"b\":0." + "1".repeat(40) + "}"))
        .containsExactly("too-many-digits /a", "too-many-digits /b");
  }

  @ParameterizedTest
  @ValueSource(strings = {"1e999999999", "-1e400", "1E-400", "123e-9999999"})
  void numbers_beyond_what_is_counted_with_are_refused(String json) {
    assertThat(faultsOf("[" + json + "]")).containsExactly("out-of-bounds /0");
  }

  @Test
  void zero_may_be_written_with_any_exponent() {
    assertThat(tree("0.0e-999")).isEqualTo(0.0);
  }

  @Test
  void bombs_are_refused_at_once() {
    assertTimeoutPreemptively(
        Duration.ofSeconds(5),
        () -> {
          assertThat(faultsOf("1".repeat(900_000))).containsExactly("too-many-digits ");
          assertThat(faultsOf("1e" + "9".repeat(900_000))).containsExactly("too-many-digits ");
          assertThat(faultsOf("[".repeat(450_000) + "]".repeat(450_000))).hasSize(1);
          assertThat(faultsOf("[".repeat(900_000))).containsExactly("not-json ");
        });
  }
}
