package tamis.api.http;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import java.util.Objects;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import tamis.engine.spi.Answer;

/**
 * Answers that were worked out, so that equal questions are not worked out again. A calculation is
 * pure: equal input at an equal revision has an equal answer.
 */
final class AnswerCache {
  /** Larger inputs are not asked twice often enough to be worth their place. */
  static final int LARGEST_INPUT = 64 * 1024;

  /** What an entry costs besides what it holds: the nodes of the cache, key and value objects. */
  private static final int OVERHEAD = 300;

  /**
   * What an answer depends on, besides its input.
   *
   * @param revision over formulas, ingredients and prices
   * @param trials the revision over trials, 0 for what reads none
   */
  record At(long revision, long trials) {}

  /** An input may be long: its hash is worked out once. */
  private record Question(String calculation, Record input, At at, int hash) {
    static Question of(String calculation, Record input, At at) {
      return new Question(calculation, input, at, Objects.hash(calculation, input, at));
    }

    @Override
    public int hashCode() {
      return hash;
    }
  }

  private record Kept(Answer<?> answer, int weight) {}

  private record Address(String address, At at) {}

  /** What one entry may weigh: the cache itself would hold a larger one until it next tidies up. */
  private final int room;

  private final @Nullable Cache<Question, Kept> answers;
  private final @Nullable Cache<Address, Reply> replies;

  /**
   * @param bytes that all that is kept may take; none is kept if it is 0
   */
  AnswerCache(int bytes) {
    room = bytes / 2;
    if (bytes == 0) {
      answers = null;
      replies = null;
    } else {
      answers =
          Caffeine.newBuilder()
              .maximumWeight(room)
              .weigher((Question question, Kept kept) -> kept.weight())
              .build();
      replies =
          Caffeine.newBuilder()
              .maximumWeight(room)
              .weigher((Address address, Reply reply) -> weight(address, reply))
              .build();
    }
  }

  private static int weight(Address address, Reply reply) {
    return OVERHEAD + 2 * address.address().length() + reply.length();
  }

  /** The reply that this address got at this revision, or null. */
  @Nullable Reply reply(String address, At at) {
    return replies == null ? null : replies.getIfPresent(new Address(address, at));
  }

  void keep(String address, At at, Reply reply) {
    var asked = new Address(address, at);
    if (replies != null && weight(asked, reply) <= room) {
      replies.put(asked, reply);
    }
  }

  /** The answer to this input, worked out if it is not kept. */
  <R extends Record> Answer<R> answer(
      String calculation, Record input, int inputBytes, At at, Supplier<Answer<R>> work) {
    if (answers == null || inputBytes > LARGEST_INPUT) {
      return work.get();
    }
    var question = Question.of(calculation, input, at);
    @Nullable Kept kept = answers.getIfPresent(question);
    if (kept != null) {
      return sameCalculation(kept.answer());
    }
    var answer = work.get();
    int weight = OVERHEAD + Weight.of(input) + Weight.of(answer.result());
    weight += Weight.of(answer.remarks()) + Weight.of(answer.sources());
    if (weight <= room) {
      answers.put(question, new Kept(answer, weight));
    }
    return answer;
  }

  @SuppressWarnings("unchecked") // one calculation has one class of results
  private static <R extends Record> Answer<R> sameCalculation(Answer<?> answer) {
    return (Answer<R>) answer;
  }
}
