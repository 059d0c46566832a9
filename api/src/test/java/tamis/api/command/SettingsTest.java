package tamis.api.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tamis.engine.record.Limit;
import tamis.engine.record.Limits;

class SettingsTest {
  private static Settings settings(Map<String, String> environment) {
    return new Settings(Map.of(), environment);
  }

  @Test
  void what_is_usual_is_what_the_engine_and_the_contract_say() {
    var server = settings(Map.of()).server();
    assertThat(server.host()).isEqualTo("127.0.0.1");
    assertThat(server.port()).isEqualTo(7070);
    assertThat(server.limits()).isEqualTo(Limits.usual());
    assertThat(server.bodyBytes()).isEqualTo(1 << 20);
    assertThat(server.queryBytes()).isEqualTo(8 << 10);
    assertThat(server.nesting()).isEqualTo(32);
    assertThat(server.origins()).isEmpty();
    assertThat(server.log()).isTrue();
    assertThat(settings(Map.of()).calculationTime()).isEqualTo(Duration.ofSeconds(10));
  }

  @Test
  void an_option_goes_before_the_environment() {
    var settings = new Settings(Map.of(Setting.PORT, "1"), Map.of("TAMIS_PORT", "2"));
    assertThat(settings.server().port()).isEqualTo(1);
    assertThat(settings(Map.of("TAMIS_PORT", "2")).server().port()).isEqualTo(2);
  }

  @Test
  void each_limit_is_a_setting() {
    var server =
        settings(
                Map.of(
                    "TAMIS_LINES", "3",
                    "TAMIS_ORDER_LINES", "4",
                    "TAMIS_READINGS", "5",
                    "TAMIS_EXPANDED_LINES", "6",
                    "TAMIS_FORMULA_DEPTH", "7",
                    "TAMIS_DIGITS", "8",
                    "TAMIS_NESTING", "9",
                    "TAMIS_BODY_BYTES", "10",
                    "TAMIS_QUERY_BYTES", "11"))
            .server();
    assertThat(server.limits().of(Limit.LINES)).isEqualTo(3);
    assertThat(server.limits().of(Limit.ORDER_LINES)).isEqualTo(4);
    assertThat(server.limits().of(Limit.READINGS)).isEqualTo(5);
    assertThat(server.limits().expandedLines()).isEqualTo(6);
    assertThat(server.limits().depth()).isEqualTo(7);
    assertThat(server.limits().digits()).isEqualTo(8);
    assertThat(server.nesting()).isEqualTo(9);
    assertThat(server.bodyBytes()).isEqualTo(10);
    assertThat(server.queryBytes()).isEqualTo(11);
  }

  @Test
  void origins_stand_with_commas_between() {
    var settings = settings(Map.of("TAMIS_ORIGINS", "https://a.example, http://b.example:81"));
    assertThat(settings.server().origins())
        .containsExactly("https://a.example", "http://b.example:81");
  }

  @ParameterizedTest(name = "{0}={1}")
  @CsvSource({
    "TAMIS_LOG,yes,on or off",
    "TAMIS_PORT,-1,whole number",
    "TAMIS_PORT,'',whole number",
    "TAMIS_BODY_BYTES,0,from 1",
    "TAMIS_BODY_BYTES,99999999999,from 1",
    "TAMIS_ORIGINS,shop.example,origins such as",
    "TAMIS_ORIGINS,https://shop.example/form,origins such as",
  })
  void a_value_that_cannot_be_meant_is_told_with_its_name(String name, String value, String said) {
    assertThatThrownBy(() -> settings(Map.of(name, value)).server())
        .isInstanceOf(WrongUse.class)
        .hasMessageContaining(name)
        .hasMessageContaining(said);
  }

  @Test
  void every_setting_says_what_it_means() {
    assertThat(Setting.values()).allSatisfy(one -> assertThat(one.meaning()).isNotBlank());
  }
}
