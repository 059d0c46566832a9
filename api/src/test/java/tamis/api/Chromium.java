package tamis.api;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;

/** The browser of the system, with its own driver; nothing is fetched. */
final class Chromium {
  private Chromium() {}

  /** A window without a screen, so many pixels wide. */
  static ChromeDriver ofWidth(int width) {
    ChromeOptions options = new ChromeOptions();
    options.setBinary(found("chromium"));
    options.addArguments(
        "--headless=new",
        "--no-sandbox",
        "--disable-dev-shm-usage",
        "--disable-gpu",
        "--lang=en-GB");
    options.setExperimentalOption(
        "mobileEmulation",
        Map.of(
            "deviceMetrics",
            Map.of(
                "width",
                width,
                "height",
                width < 500 ? 1200 : 900,
                "pixelRatio",
                1.0,
                "touch",
                false,
                "mobile",
                width < 500)));
    ChromeDriverService driver =
        new ChromeDriverService.Builder()
            .usingDriverExecutable(Path.of(found("chromedriver")).toFile())
            .usingAnyFreePort()
            .build();
    return new ChromeDriver(driver, options);
  }

  private static String found(String program) {
    return List.of("/usr/bin/", "/usr/lib/chromium/", "/snap/bin/").stream()
        .map(folder -> folder + program)
        .filter(path -> Files.isExecutable(Path.of(path)))
        .findFirst()
        .orElseThrow(() -> new IllegalStateException(program + " is not installed"));
  }
}
