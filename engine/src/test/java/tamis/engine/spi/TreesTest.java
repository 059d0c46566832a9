package tamis.engine.spi;

import static org.assertj.core.api.Assertions.assertThat;
import static tamis.engine.spi.CalculationContractTest.Out;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What the contract reads answers as. */
class TreesTest {
  @Test
  void trees_are_what_a_caller_would_write() {
    Map<String, Object> tree = Trees.of(new Out(2.5, List.of("a", "b"), null));
    assertThat(tree).isEqualTo(Map.of("grams", 2.5, "words", List.of("a", "b")));
    assertThat(Trees.leaves(tree))
        .containsOnlyKeys("/grams", "/words/0", "/words/1")
        .containsEntry("/words/1", "b");
    for (String there : List.of("", "/grams", "/words", "/words/1")) {
      assertThat(Trees.has(tree, there)).as(there).isTrue();
    }
    for (String gone : List.of("/note", "/words/2", "/words/01", "/words/-", "/grams/0", "/")) {
      assertThat(Trees.has(tree, gone)).as(gone).isFalse();
    }
    assertThat(Trees.has(Map.of("a/b", Map.of("~", 1)), "/a~1b/~0")).isTrue();
  }
}
