package tamis.api;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import picocli.CommandLine;

/**
 * The form in a real browser, on a page at another address than the API. Needs Chromium and its
 * driver: {@code apt-get install chromium chromium-driver}.
 */
@Tag("order-form")
class OrderFormTest {
  private static final Duration PATIENCE = Duration.ofSeconds(20);
  private static final UnaryOperator<String> AS_IT_IS = html -> html;

  @TempDir static Path data;
  private static ShopPage shop;
  private static String api;
  private static Thread server;
  private static ChromeDriver narrow;
  private static ChromeDriver wide;

  private ChromeDriver browser;
  private ShopPage page;

  @BeforeAll
  static void serve_the_demo_to_one_origin() throws Exception {
    // The page must be there before its origin can be named, and names the API itself.
    StringWriter out = new StringWriter();
    shop = ShopPage.form("http://127.0.0.1:1", AS_IT_IS);
    CommandLine command = Main.commandLine(Map.of("TAMIS_ORIGINS", shop.origin()));
    command.setOut(new PrintWriter(out));
    command.setErr(new PrintWriter(new StringWriter()));
    String[] arguments = {"serve", "--port", "0", "--demo", "--data", data.toString()};
    server = new Thread(() -> command.execute(arguments), "order form");
    server.setDaemon(true);
    server.start();
    for (int i = 0; i < 600 && !out.toString().contains("\n"); i++) {
      Thread.sleep(100);
    }
    api =
        out.toString()
            .strip()
            .lines()
            .findFirst()
            .orElseThrow()
            .replace("Tamis is serving at ", "");
    narrow = Chromium.ofWidth(360);
    wide = Chromium.ofWidth(1280);
  }

  @AfterAll
  static void stop() {
    for (ChromeDriver one : new ChromeDriver[] {narrow, wide}) {
      if (one != null) {
        one.quit();
      }
    }
    shop.close();
    server.interrupt();
  }

  @BeforeEach
  void start_wide() {
    browser = wide;
  }

  @AfterEach
  void close_the_page() {
    if (page != null) {
      page.close();
    }
  }

  /** The form on the origin that the API lets call. */
  private void open() {
    browser.get(shop.origin());
    js("document.querySelector('.cp-order').dataset.api = arguments[0]", api);
  }

  private void open(String otherApi, UnaryOperator<String> changes) throws Exception {
    page = ShopPage.form(otherApi, changes);
    browser.get(page.origin());
  }

  private Object js(String script, Object... arguments) {
    return browser.executeScript(script, arguments);
  }

  private WebElement field(String name) {
    return browser.findElement(By.id("cp-" + name));
  }

  private void set(String name, String value) {
    js(
        "arguments[0].value = arguments[1];"
            + "arguments[0].dispatchEvent(new Event('input', {bubbles: true}));"
            + "arguments[0].dispatchEvent(new Event('change', {bubbles: true}));",
        field(name),
        value);
  }

  private static String inHours(int hours) {
    return LocalDateTime.now()
        .plusHours(hours)
        .format(DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm"));
  }

  private String answer(String wanted) throws InterruptedException {
    long end = System.nanoTime() + PATIENCE.toNanos();
    String text = "";
    while (System.nanoTime() < end) {
      text = String.valueOf(js("return document.getElementById('cp-answer').innerText"));
      if (text.contains(wanted)) {
        return text;
      }
      Thread.sleep(50);
    }
    assertThat(text).contains(wanted);
    return text;
  }

  @Test
  void price_allergens_and_time_come_from_the_other_address() throws Exception {
    open();
    set("due", inHours(72));
    String text = answer("This can be ordered");
    assertThat(text)
        .contains("€40.83", "Ready from", "walnut", "milk", "eggs", "May contain", "almond");
    set("count", "2");
    assertThat(answer("€81.66")).contains("Each", "€40.83");
    set("cake", "5");
    assertThat(answer("€10.40")).contains("wheat").doesNotContain("walnut");
  }

  @Test
  void too_soon_is_told_with_the_earliest_time() throws Exception {
    open();
    set("due", inHours(1));
    assertThat(answer("Too soon")).contains("Ready from");
    assertThat(field("due").getAttribute("aria-invalid")).isEqualTo("true");
    assertThat(field("due-wrong").getText()).contains("at the earliest");
  }

  @Test
  void it_is_filled_in_by_the_keyboard_alone() throws Exception {
    open();
    WebElement body = browser.findElement(By.tagName("body"));
    body.sendKeys(Keys.TAB);
    for (String name : List.of("cake", "size", "count")) {
      assertThat(browser.switchTo().activeElement().getAttribute("id")).isEqualTo("cp-" + name);
      assertThat(js("return getComputedStyle(document.activeElement).outlineStyle"))
          .as("focus is seen at %s", name)
          .isEqualTo("solid");
      if (name.equals("cake")) {
        browser.switchTo().activeElement().sendKeys("Leek");
      }
      browser.switchTo().activeElement().sendKeys(Keys.TAB);
    }
    assertThat(browser.switchTo().activeElement().getAttribute("id")).isEqualTo("cp-due");
    set("due", inHours(72));
    answer("€29.00");
    WebElement due = field("due");
    for (int i = 0;
        i < 12 && !"A".equalsIgnoreCase(browser.switchTo().activeElement().getTagName());
        i++) {
      browser.switchTo().activeElement().sendKeys(Keys.TAB);
    }
    assertThat(due).isNotNull();
    assertThat(browser.switchTo().activeElement().getText()).isEqualTo("Send this order by e-mail");
  }

  @Test
  void a_screen_reader_finds_names_hints_and_what_changes() throws Exception {
    open();
    assertThat(field("cake").getAccessibleName()).isEqualTo("What would you like?");
    assertThat(field("size").getAccessibleName()).isEqualTo("Size of one");
    assertThat(field("count").getAccessibleName()).isEqualTo("How many?");
    assertThat(field("due").getAccessibleName()).isEqualTo("Collected on");
    assertThat(field("answer").getAriaRole()).isEqualTo("status");
    assertThat(field("answer").getAttribute("aria-live")).isEqualTo("polite");
    set("due", inHours(72));
    answer("This can be ordered");
    set("count", "0");
    assertThat(answer("Fill in the form")).isNotBlank();
    assertThat(field("count").getAttribute("aria-invalid")).isEqualTo("true");
    String described = field("count").getAttribute("aria-describedby");
    assertThat(described).contains("cp-count-wrong");
    assertThat(field("count-wrong").getText()).contains("whole number from 1 to 50");
    assertThat(js("return document.documentElement.lang")).isEqualTo("en");
  }

  @Test
  void what_is_no_longer_on_offer_is_told_at_its_field() throws Exception {
    browser.get(shop.origin());
    js(
        "document.querySelector('.cp-order').dataset.api = arguments[0];"
            + "var b = window.fetch; window.fetch = function (u, o) {"
            + " o.body = o.body.replace('coffee-layer-cake', 'genoise'); return b(u, o); };",
        api);
    set("due", inHours(72));
    answer("This cannot be ordered");
    assertThat(field("cake").getAttribute("aria-invalid")).isEqualTo("true");
    assertThat(field("cake-wrong").getText()).contains("not on offer");
  }

  @Test
  void an_api_that_is_away_is_told_and_can_be_asked_again() throws Exception {
    open("http://127.0.0.1:1", AS_IT_IS);
    set("due", inHours(72));
    answer("The bakery cannot be reached");
    try (ShopPage back = ShopPage.api(200, "{\"result\":{\"total\":\"3.00 EUR\",\"lines\":[]}}")) {
      js("document.querySelector('.cp-order').dataset.api = arguments[0]", back.origin());
      browser.findElement(By.cssSelector(".cp-answer button")).click();
      answer("€3.00");
    }
  }

  @Test
  void a_page_that_may_not_call_is_told_so() throws Exception {
    open(api, AS_IT_IS);
    set("due", inHours(72));
    answer("The bakery cannot be reached");
    for (int status : new int[] {401, 403}) {
      refusedWith(status, "Not from this page");
    }
    refusedWith(429, "Try again in 7 seconds");
    refusedWith(503, "Many are asking");
    refusedWith(500, "answered with an error (500)");
  }

  private void refusedWith(int status, String words) throws Exception {
    try (ShopPage refusing = ShopPage.api(status, "{}")) {
      js("document.querySelector('.cp-order').dataset.api = arguments[0]", refusing.origin());
      set("count", "2");
      answer(words);
    }
  }

  @Test
  void whatever_comes_back_is_text_and_never_markup() throws Exception {
    String bad = "<img src=x onerror='window.hit=1'><script>window.hit=1</script>";
    String result =
        "{\"result\":{\"total\":\""
            + bad
            + "\",\"earliest\":\""
            + bad
            + "\",\"lines\":[{\"count\":2,\"each\":\""
            + bad
            + "\",\"portions\":\""
            + bad
            + "\",\"contains\":[{\"name\":\""
            + bad
            + "\",\"species\":\""
            + bad
            + "\"}],\"mayContain\":[{\"name\":\""
            + bad
            + "\"}]}]},\"remarks\":[{\"kind\":\"caution\",\"message\":\""
            + bad
            + "\"}]}";
    try (ShopPage lying = ShopPage.api(200, result)) {
      open(lying.origin(), AS_IT_IS);
      set("due", inHours(72));
      assertThat(answer("<img src=x")).contains("window.hit");
      assertUnharmed();
    }
    String faults =
        "{\"detail\":\""
            + bad
            + "\",\"faults\":[{\"pointer\":\"/orders/0/count\",\"message\":\""
            + bad
            + "\"},{\"pointer\":\"/other\",\"message\":\""
            + bad
            + "\"}]}";
    page.close();
    try (ShopPage lying = ShopPage.api(422, faults)) {
      open(lying.origin(), AS_IT_IS);
      set("due", inHours(72));
      answer("<img src=x");
      assertThat(field("count-wrong").getText()).contains("<img src=x");
      assertUnharmed();
    }
  }

  private void assertUnharmed() throws InterruptedException {
    Thread.sleep(200);
    assertThat(js("return window.hit")).isNull();
    assertThat(browser.findElements(By.cssSelector(".cp-order img, .cp-order script"))).isEmpty();
  }

  @Test
  void it_asks_once_when_typing_stops_and_nobody_else() throws Exception {
    try (ShopPage counting =
        ShopPage.api(200, "{\"result\":{\"total\":\"3.00 EUR\",\"lines\":[]}}")) {
      open(counting.origin(), AS_IT_IS);
      set("due", inHours(72));
      for (String typed : List.of("1", "12", "1", "13", "14")) {
        set("count", typed);
      }
      answer("€3.00");
      Thread.sleep(600);
      assertThat(counting.asked()).hasSize(1);
      assertThat(counting.asked().get(0)).contains("\"count\":14").doesNotContain("price");
      Object addresses =
          js(
              "return performance.getEntriesByType('resource').map(function (e) { return new URL(e.name).origin })");
      assertThat((List<?>) addresses)
          .allMatch(
              one ->
                  one.equals(counting.origin()) || one.equals("null") || one.equals(page.origin()));
    }
  }

  @Test
  void it_fits_a_narrow_screen_and_a_wide_one() throws Exception {
    for (ChromeDriver one : List.of(narrow, wide)) {
      browser = one;
      open();
      set("due", inHours(72));
      answer("This can be ordered");
      int width = one == narrow ? 360 : 1280;
      assertThat(((Number) js("return document.documentElement.clientWidth")).intValue())
          .isEqualTo(width);
      assertThat(((Number) js("return document.documentElement.scrollWidth")).intValue())
          .isLessThanOrEqualTo(width);
      Object small =
          js(
              "return Array.from(document.querySelectorAll('.cp-order select, .cp-order input, .cp-order a'))"
                  + ".filter(function (e) { return e.getBoundingClientRect().height < 44 }).length");
      assertThat(((Number) small).intValue()).as("small targets at %d", width).isZero();
      js("var h = document.documentElement.scrollHeight; document.body.style.minHeight = h + 'px'");
      Files.write(
          Path.of("target", "order-form-" + width + ".png"), one.getScreenshotAs(OutputType.BYTES));
    }
  }

  /** WCAG 2: contrast of text and its ground is at least 4.5. */
  @Test
  void all_text_stands_out_from_its_ground() throws Exception {
    open();
    set("due", inHours(1));
    answer("Too soon");
    Object least =
        js(
            """
            function rgb(c) { return c.match(/[\\d.]+/g).map(Number); }
            function light(c) { return c.slice(0, 3).map(function (v) { v /= 255;
              return v <= .03928 ? v / 12.92 : Math.pow((v + .055) / 1.055, 2.4); })
              .reduce(function (s, v, i) { return s + v * [.2126, .7152, .0722][i]; }, 0); }
            function ground(e) { for (; e; e = e.parentElement) {
              var c = rgb(getComputedStyle(e).backgroundColor); if (c.length < 4 || c[3] > 0) { return c; } }
              return [255, 255, 255]; }
            return Array.from(document.querySelectorAll('.cp-order *')).filter(function (e) {
              return e.tagName !== 'OPTION' && e.innerText && e.childNodes.length === 1; }).map(function (e) {
              var a = light(rgb(getComputedStyle(e).color)), b = light(ground(e));
              return (Math.max(a, b) + .05) / (Math.min(a, b) + .05); })
              .reduce(function (m, v) { return Math.min(m, v); }, 99);
            """);
    assertThat(((Number) least).doubleValue()).isBetween(4.5, 21.0);
  }
}
