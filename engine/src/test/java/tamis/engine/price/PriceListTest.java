package tamis.engine.price;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.tuple;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.record.References;

/** What a price list may say. */
class PriceListTest {

  private static PriceList list(Map<String, Object> price) {
    return new RecordReader(References.UNCHECKED, Limits.usual())
        .read(PriceList.class, Map.of("prices", List.of(price)));
  }

  @ParameterizedTest
  @ValueSource(strings = {"0 kg", "0 each", "as needed", "5 %"})
  void a_pack_of_no_size_is_refused_before_it_is_kept(String pack) {
    Map<String, Object> price = Map.of("ingredient", "salt", "pack", pack, "price", "8 EUR");
    Refusal refusal = catchThrowableOfType(Refusal.class, () -> list(price));
    assertThat(refusal).isNotNull();
    assertThat(refusal.faults())
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(tuple(FaultCode.OUT_OF_BOUNDS, "/prices/0/pack"));
  }

  @Test
  void a_negative_price_is_refused() {
    Map<String, Object> price = Map.of("ingredient", "salt", "pack", "1 kg", "price", "-8 EUR");
    Refusal refusal = catchThrowableOfType(Refusal.class, () -> list(price));
    assertThat(refusal).isNotNull();
    assertThat(refusal.faults()).extracting(Fault::pointer).containsExactly("/prices/0/price");
  }

  @Test
  void what_costs_nothing_may_be_listed() {
    Map<String, Object> price = Map.of("ingredient", "water", "pack", "1 l", "price", "0 EUR");
    assertThat(list(price).prices()).hasSize(1);
  }
}
