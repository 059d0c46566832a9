package tamis.api.representation;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Function;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tamis.engine.fault.Refusal;
import tamis.engine.record.Limits;
import tamis.engine.record.References;

/** Whatever is sent gives a value or a refusal, never another exception. The seed is the number. */
class AnythingTest {
  private static final int TRIES = 20_000;
  private static final List<String> BODIES =
      List.of(
          "{\"mass\":\"1 kg\",\"named\":[\"egg\",\"crème\"],\"step\":0.5,\"dusting\":true}",
          "{\"pieces\":12,\"pieceMass\":\"50 g\",\"formula\":{\"lines\":[{\"ingredient\":\"egg\","
              + "\"quantity\":\"2 1/4 cup\",\"remains\":0.4}]},\"to\":{\"factor\":1e2}}",
          "{\"mass\":\"1 g\",\"pan\":{\"shape\":\"ring\",\"diameter\":\"20 cm\"},\"note\":\"\\ud83c\\udf5e\"}");
  private static final List<String> QUERIES =
      List.of(
          "mass=1+kg&named=egg&named=cr%C3%A8me&step=0,5&decimal=comma&pick=/lines/0&k=1",
          "pieces=12&pieceMass=50%20g&to.pans.0.pan.shape=round&to.pans.1.pan=x&shares.a=0.1");

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void any_body_is_read_or_refused(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    int read = 0;
    for (int i = 0; i < TRIES; i++) {
      byte[] bytes = changed(BODIES.get(i % BODIES.size()).getBytes(UTF_8), random);
      read +=
          readOrRefused(
              bytes,
              all ->
                  QueryInput.options(null, new Weighing(), 100)
                      .input(
                          Weighing.Input.class,
                          StrictJson.tree(all, JsonLimits.usual()),
                          References.UNCHECKED,
                          Limits.usual()));
    }
    assertThat(read).as("read whole").isBetween(TRIES / 100, TRIES * 9 / 10);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void any_query_is_read_or_refused(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    int read = 0;
    for (int i = 0; i < TRIES; i++) {
      byte[] bytes = changed(QUERIES.get(i % QUERIES.size()).getBytes(UTF_8), random);
      read +=
          readOrRefused(
              bytes,
              all ->
                  QueryInput.read(new String(all, UTF_8), new Weighing(), QueryInput.LONGEST)
                      .input(Weighing.Input.class, References.UNCHECKED, Limits.usual()));
    }
    assertThat(read).as("read whole").isBetween(TRIES / 100, TRIES * 9 / 10);
  }

  private static int readOrRefused(byte[] bytes, Function<byte[], Object> reader) {
    try {
      assertThat(reader.apply(bytes)).isNotNull();
      return 1;
    } catch (Refusal refusal) {
      assertThat(new String(Problem.of(refusal).bytes(), UTF_8)).contains("\"status\":4");
      return 0;
    } catch (RuntimeException | Error wrong) {
      throw new AssertionError(new String(bytes, UTF_8) + " " + Arrays.toString(bytes), wrong);
    }
  }

  /** One to three bytes changed, doubled, left out, or exchanged for one that means something. */
  private static byte[] changed(byte[] bytes, SplittableRandom random) {
    byte[] result = bytes.clone();
    for (int change = random.nextInt(4); change > 0; change--) {
      int at = random.nextInt(result.length);
      byte[] marks = "{}[]\",:.&=%+0e-/~\\'".getBytes(UTF_8);
      switch (random.nextInt(4)) {
        case 0 -> result[at] = (byte) random.nextInt();
        case 1 -> result[at] = marks[random.nextInt(marks.length)];
        case 2 -> result = Arrays.copyOf(result, Math.max(1, at));
        default -> {
          byte[] longer = Arrays.copyOf(result, result.length + at);
          System.arraycopy(result, 0, longer, result.length, at);
          result = longer;
        }
      }
    }
    return result;
  }
}
