package tamis.api.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tamis.api.http.AnswerCache.At;
import tamis.engine.record.Described;
import tamis.engine.spi.Answer;

class AnswerCacheTest {
  /** What is asked and answered. */
  public record Weighed(@Described("Mass") double grams, @Described("Name") String name) {}

  private static final int MANY_BYTES = 1 << 20;

  private final List<Weighed> worked = new ArrayList<>();

  private Answer<Weighed> asked(AnswerCache cache, Weighed input, int inputBytes, long revision) {
    return cache.answer(
        "weighing",
        input,
        inputBytes,
        new At(revision, 0),
        () -> {
          worked.add(input);
          return Answer.of(input);
        });
  }

  @Test
  void an_equal_question_at_an_equal_revision_is_worked_out_once() {
    var cache = new AnswerCache(MANY_BYTES);
    asked(cache, new Weighed(1, "a"), 10, 7);
    assertThat(asked(cache, new Weighed(1, "a"), 10, 7).result()).isEqualTo(new Weighed(1, "a"));
    assertThat(worked).hasSize(1);
    asked(cache, new Weighed(2, "a"), 10, 7);
    asked(cache, new Weighed(1, "a"), 10, 8);
    assertThat(worked).hasSize(3);
  }

  @Test
  void a_large_input_is_not_kept() {
    var cache = new AnswerCache(MANY_BYTES);
    asked(cache, new Weighed(1, "a"), AnswerCache.LARGEST_INPUT + 1, 7);
    asked(cache, new Weighed(1, "a"), AnswerCache.LARGEST_INPUT + 1, 7);
    assertThat(worked).hasSize(2);
  }

  @Test
  void nothing_is_kept_without_room() {
    var cache = new AnswerCache(0);
    asked(cache, new Weighed(1, "a"), 10, 7);
    asked(cache, new Weighed(1, "a"), 10, 7);
    assertThat(worked).hasSize(2);
    cache.keep("/x", new At(1, 1), Reply.empty(204));
    assertThat(cache.reply("/x", new At(1, 1))).isNull();
  }

  @Test
  void an_answer_that_is_larger_than_the_room_is_not_kept() {
    var cache = new AnswerCache(10_000);
    var large = new Weighed(1, "x".repeat(6_000));
    asked(cache, large, 10, 7);
    asked(cache, large, 10, 7);
    assertThat(worked).hasSize(2);
  }

  @Test
  void a_reply_is_kept_for_its_address_and_revision() {
    var cache = new AnswerCache(MANY_BYTES);
    var reply = Reply.json(new byte[] {'1'});
    cache.keep("/x", new At(1, 1), reply);
    assertThat(cache.reply("/x", new At(1, 1))).isSameAs(reply);
    assertThat(cache.reply("/x", new At(2, 1))).isNull();
    assertThat(cache.reply("/x", new At(1, 2))).isNull();
    assertThat(cache.reply("/y", new At(1, 1))).isNull();
  }

  @Test
  void a_weight_grows_with_what_is_held() {
    int small = Weight.of(new Weighed(1, "a"));
    assertThat(Weight.of(new Weighed(1, "a".repeat(100)))).isEqualTo(small + 99);
    assertThat(Weight.of(List.of(new Weighed(1, "a"), new Weighed(2, "b"))))
        .isGreaterThan(2 * small);
    assertThat(Weight.of(Map.of("x", 1.0))).isGreaterThan(Weight.of(Map.of()));
  }
}
